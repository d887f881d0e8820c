/** From readings at any spacing to the mean of each cell of a grid. */
import { cellMeans } from './cellMeans.ts';
import type { Grid } from './grid.ts';

/**
 * Momentary readings: a cell's value is the exact mean over it of the straight lines between readings.
 *
 * @param time   instants, strictly rising [s]; length n
 * @param value  in any unit; length n; NaN makes a gap from the reading before to the one after
 * @param maxGap readings further apart than this [s] have a gap between them
 * @returns one value per cell in the unit of the readings; NaN where a cell touches a gap or lies partly
 *          outside of the record
 * @throws RangeError when the lengths differ
 */
export function resample(time: Float64Array, value: Float64Array, grid: Grid, maxGap: number): Float64Array {
  if (time.length !== value.length) throw new RangeError('time and value differ in length');
  const cells = cellMeans(grid);
  for (let i = 1; i < time.length; i++)
    if (time[i] - time[i - 1] <= maxGap) cells.add(time[i - 1], time[i], value[i - 1], value[i]);
  return cells.means();
}

/**
 * Readings that are means over an interval, such as those of weather and power: a value holds from the reading
 * before to its own ('end'), or from its own to the one after ('start'). A reading without such a neighbour,
 * at the edge of the record or of a gap, holds over the median spacing.
 *
 * @param time   instants, strictly rising [s]; length n
 * @param value  in any unit; length n; NaN makes a gap
 * @param maxGap readings further apart than this [s] have a gap between them
 * @param stamp  which end of its interval a reading carries
 * @returns one time-weighted mean per cell; NaN where a cell touches a gap or lies partly outside of the record
 * @throws RangeError when the lengths differ
 */
export function resampleIntervalMeans(
  time: Float64Array,
  value: Float64Array,
  grid: Grid,
  maxGap: number,
  stamp: 'start' | 'end',
): Float64Array {
  if (time.length !== value.length) throw new RangeError('time and value differ in length');
  const cells = cellMeans(grid);
  const usual = usualSpacing(time, maxGap);
  const toward = stamp === 'end' ? -1 : 1;
  for (let i = 0; i < time.length; i++) {
    const spacing = Math.abs(time[i + toward] - time[i]);
    const other = time[i] + toward * (spacing <= maxGap ? spacing : usual);
    cells.add(Math.min(time[i], other), Math.max(time[i], other), value[i], value[i]);
  }
  return cells.means();
}

/** The median spacing of readings without a gap between them [s]; 0, no interval at all, where there are none. */
function usualSpacing(time: Float64Array, maxGap: number): number {
  const spacings = time.subarray(1).map((it, i) => it - time[i]);
  const sorted = spacings.filter((it) => it <= maxGap).sort();
  return sorted.length === 0 ? 0 : sorted[sorted.length >> 1];
}
