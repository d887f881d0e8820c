/** The hours in which the network's heat balance is held against the readings. */
import type { Grid } from '../../series/grid.ts';

/** Intervals from one cell of the grid to the next: `from` up to before `to`. */
export interface Block {
  readonly from: number;
  readonly to: number;
  /** Of its middle, since the span began [s]. */
  readonly sinceStart: number;
}

/** A night or a day that hangs together: what it lacks or has over as a whole is judged apart from its course. */
export interface Span {
  readonly kind: 'free' | 'heated' | 'metered';
  /** Which stage it belongs to, by its place in the order. */
  readonly stage: number;
  readonly blocks: readonly Block[];
}

/** Cells a block is long, at least [s]: shorter ones are the loggers' noise. */
const BLOCK = 2 * 3600;

/** A span cut into blocks of equal length, of about two hours. */
export function spanOf(grid: Grid, kind: Span['kind'], stage: number, first: number, last: number): Span {
  const count = Math.max(1, Math.round(((last - first) * grid.step) / BLOCK));
  const bound = (k: number) => first + Math.round(((last - first) * k) / count);
  return {
    kind,
    stage,
    blocks: Array.from({ length: count }, (_, k) => {
      const from = bound(k);
      const to = bound(k + 1);
      return { from, to, sinceStart: ((from + to) / 2 - first) * grid.step };
    }).filter(({ from, to }) => to > from),
  };
}
