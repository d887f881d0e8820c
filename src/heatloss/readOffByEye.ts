/** A spell of heat that was read off by eye is known only while it lasts; a log that breaks off is not known after. */
import type { Grid } from '../series/grid.ts';

/** A log that breaks off knew of some of these hours before the heater came on [s]. */
const BEFORE = 6 * 3600;

/**
 * Whether heat is known of this spell alone: of nothing in the hours before it, nor after it. Then somebody wrote down
 * when the heater was on, and means that it was off otherwise.
 *
 * @param power metered heat on the grid [W], NaN where not known
 * @param first cell in which the spell begins, or that it had begun before at the same power
 * @param last  its last cell
 * @param until the last cell of the night
 */
export function readOffByEye(
  { step }: Grid,
  power: Float64Array,
  { first, last, until }: { readonly first: number; readonly last: number; readonly until: number },
): boolean {
  let begin = first;
  while (begin > 0 && power[begin - 1] === power[begin]) begin--;
  const before = power.subarray(Math.max(0, begin - Math.round(BEFORE / step)), begin);
  return (
    before.length > 0 && before.every(Number.isNaN) && power.subarray(last + 1, until + 1).every(Number.isNaN)
  );
}
