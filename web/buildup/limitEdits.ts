/** Edits of the limiting U-values that a house's own are set beside. */
import { exampleLimits } from '../../src/fabric/index.ts';
import type { House, LimitKind } from '../../src/house.ts';

export type Limits = NonNullable<House['limits']>;

/** A table of one's own, which begins as a copy of the example. */
export function ownLimits(house: House): void {
  house.limits = {
    name: 'Our own table',
    dated: exampleLimits.dated,
    note: `Begun as a copy of: ${exampleLimits.name}.`,
    uValues: Object.fromEntries(exampleLimits.limits.map(({ kind, transmittance }) => [kind, transmittance])),
  };
}

export function exampleAgain(house: House): void {
  delete house.limits;
}

/** A key that is undefined is left out from then on. */
export function changeLimits({ limits }: House, change: Partial<Limits>): void {
  if (limits !== undefined) Object.assign(limits, change);
}

/** @param transmittance [W/(m²K)]; undefined for a kind without a limit */
export function changeLimit({ limits }: House, kind: LimitKind, transmittance: number | undefined): void {
  if (limits !== undefined) Object.assign(limits.uValues, { [kind]: transmittance });
}
