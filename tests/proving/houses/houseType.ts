/** A kind of house in the proving ground: its drawings, and how such houses are built and stand. */
import type { Box } from './box.ts';

export interface HouseType {
  readonly name: string;
  readonly box: Box;
  /** What the drawings say of the air: with the vents shut, and with them open. */
  readonly drawnAirChanges: { readonly tested: number; readonly open: number };
  /** Whether a logger hangs at the heated neighbour; undefined where there is none. */
  readonly neighbourLogged?: boolean;
  /** Closest and widest leakage of such houses over the drawn one. */
  readonly leakage: { readonly least: number; readonly most: number };
}
