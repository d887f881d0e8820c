/** A temperature sensor that has not begun to measure. */
import { median } from 'simple-statistics';

/**
 * Rows where a temperature sensor that starts up gives exactly 0: its first reading, more than 10 K from the four
 * that follow and from the other temperatures of its row.
 *
 * @param instants time of each row [s], in any order; NaN where it has none
 * @param values   one column [°C]; as long as `instants`
 * @param others   the other temperature columns [°C]
 */
export function startingZeros(
  instants: Float64Array,
  values: Float64Array,
  others: readonly Float64Array[],
): number[] {
  const isReading = (i: number) => !Number.isNaN(instants[i]) && !Number.isNaN(values[i]);
  let first = -1;
  for (let i = 0; i < values.length; i++)
    if (isReading(i) && (first < 0 || instants[i] < instants[first])) first = i;
  if (values[first] !== 0) return [];
  const rows = [...values.keys()].filter(isReading).sort((i, j) => instants[i] - instants[j]);
  const begin = rows.filter((i) => instants[i] === instants[first]);
  const next = new Map(rows.slice(begin.length).map((i) => [instants[i], values[i]]));
  const following = [...next.values()].slice(0, 4);
  const beside = others.map((other) => other[first]).filter((value) => !Number.isNaN(value));
  const isFar = (value: number) => Math.abs(value) > 10;
  const starts = following.length === 4 && isFar(median(following)) && beside.every(isFar);
  return starts ? begin.filter((i) => values[i] === 0) : [];
}
