/** From a running meter to power. */
import { cellMeans } from './cellMeans.ts';
import type { Grid } from './grid.ts';

export interface MeterPower {
  /** Mean power of each cell [W]; NaN where a cell touches a gap or lies partly outside of the record. */
  readonly power: Float64Array;
  /** How often the meter jumped: it was reset or exchanged, and what it counted meanwhile is lost. */
  readonly resets: number;
}

/**
 * Mean power in each cell of a grid from a meter that counts up. Between two readings the power counts as
 * steady, which keeps the energy; a step down is a gap, and one up that is steeper than it can be.
 *
 * @param time   instants, strictly rising [s]; length n
 * @param energy what the meter shows [J]; length n
 * @param maxGap readings further apart than this [s] have a gap between them
 * @param most   a mean power above this [W] is another meter's reading; any is believed when left out
 * @throws RangeError when the lengths differ
 */
export function meterPower(
  time: Float64Array,
  energy: Float64Array,
  grid: Grid,
  maxGap: number,
  most = Number.POSITIVE_INFINITY,
): MeterPower {
  if (time.length !== energy.length) throw new RangeError('time and energy differ in length');
  const cells = cellMeans(grid);
  let resets = 0;
  for (let i = 1; i < time.length; i++) {
    const spacing = time[i] - time[i - 1];
    const power = (energy[i] - energy[i - 1]) / spacing;
    if (power < 0 || power > most) resets++;
    else if (spacing <= maxGap) cells.add(time[i - 1], time[i], power, power);
  }
  return { power: cells.means(), resets };
}
