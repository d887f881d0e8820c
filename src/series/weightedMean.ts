/** One temperature for the whole inside from loggers in several rooms. */

/**
 * At each cell the mean of the series, weighted (by the volume of the rooms). A series that drops out does
 * not make a step:
 *
 * - Where those missing hold more than half of the weight, the cell is NaN.
 * - Otherwise each one missing is taken to stand as far from the mean of those present as it did on average
 *   over the cells where none is missing.
 * - Where the series are never all present at once there is no such average: the mean is that of those
 *   present, however many, and steps where they change.
 *
 * @param series  k arrays of the same length, NaN where missing; at least one
 * @param weights length k, above 0
 * @returns one value per cell in the unit of the series
 * @throws RangeError when the lengths differ, nothing is given or a weight is not above 0
 */
export function weightedMean(series: readonly Float64Array[], weights: readonly number[]): Float64Array {
  if (series.length === 0 || weights.length !== series.length)
    throw new RangeError('one weight for each series');
  if (series.some((it) => it.length !== series[0].length))
    throw new RangeError('the series differ in length');
  if (!weights.every((it) => it > 0 && Number.isFinite(it))) throw new RangeError('a weight is not above 0');

  const usual = meansOverCompleteCells(series);
  const everyone = series.map((_, k) => k);
  const whole = meanOf(weights, everyone, (k) => usual?.[k] ?? 0);
  return series[0].map((_, cell) => {
    const present = everyone.filter((k) => !Number.isNaN(series[k][cell]));
    const mean = meanOf(weights, present, (k) => series[k][cell]);
    if (usual === null || present.length === series.length) return mean;
    const half = sumOf(weights) / 2;
    if (sumOf(present.map((k) => weights[k])) < half) return Number.NaN;
    // the offsets of those missing, each with its weight, come to this difference of two usual means
    return mean + whole - meanOf(weights, present, (k) => usual[k]);
  });
}

/** The mean of each series over the cells where none is missing; null without such a cell. */
function meansOverCompleteCells(series: readonly Float64Array[]): number[] | null {
  const complete = Array.from(series[0].keys()).filter((cell) =>
    series.every((it) => !Number.isNaN(it[cell])),
  );
  if (complete.length === 0) return null;
  return series.map((it) => sumOf(complete.map((cell) => it[cell])) / complete.length);
}

/** The weighted mean over some of the series; NaN over none. */
function meanOf(weights: readonly number[], some: readonly number[], value: (k: number) => number): number {
  return sumOf(some.map((k) => weights[k] * value(k))) / sumOf(some.map((k) => weights[k]));
}

const sumOf = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0);
