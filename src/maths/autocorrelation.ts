/** Whether what a fit leaves over still hangs together in time. Series are evenly spaced, without NaN. */
import jStat from 'jstat';

/**
 * Correlation of a series with itself some steps later, about its mean; NaN for a constant series.
 * Box, Jenkins and Reinsel, Time Series Analysis, 4th ed. 2008, 2.1.6.
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const all = Array.from(values);
  const mean = all.reduce((sum, it) => sum + it, 0) / all.length;
  const deviations = all.map((it) => it - mean);
  return productSum(deviations, lag) / productSum(deviations, 0);
}

/** Correlation of neighbours. */
export function lag1Autocorrelation(values: ArrayLike<number>): number {
  return autocorrelation(values, 1);
}

/**
 * About 2 when neighbours are independent, towards 0 when they follow each other. The residuals are taken as
 * they are, not about their mean. Durbin and Watson, Biometrika 37 (1950) 409, doi:10.1093/biomet/37.3-4.409.
 */
export function durbinWatson(residuals: ArrayLike<number>): number {
  const all = Array.from(residuals);
  const steps = all.slice(1).map((it, i) => it - all[i]);
  return productSum(steps, 0) / productSum(all, 0);
}

/**
 * Whether the first autocorrelations together are more than chance: Q, and the probability of a larger Q
 * without any. Ljung and Box, Biometrika 65 (1978) 297, doi:10.1093/biomet/65.2.297.
 *
 * @param lags   how many autocorrelations, at least 1 and fewer than there are values
 * @param fitted parameters of a time-series model that left these residuals; takes off degrees of freedom
 */
export function ljungBox(
  values: ArrayLike<number>,
  lags: number,
  fitted = 0,
): { q: number; probability: number } {
  const count = values.length;
  if (!(lags >= 1 && lags < count)) throw new RangeError(`${lags} lags of ${count} values`);
  if (lags <= fitted) throw new RangeError('no more lags than fitted parameters');
  let sum = 0;
  for (let lag = 1; lag <= lags; lag++) sum += autocorrelation(values, lag) ** 2 / (count - lag);
  const q = count * (count + 2) * sum;
  return { q, probability: 1 - jStat.chisquare.cdf(q, lags - fitted) };
}

/** Beyond this the series is one excursion, and its length says more than the formula. */
const STRONGEST = 0.99;

/**
 * By how much the variance of a mean grows when neighbours correlate by φ, (1 + φ)/(1 − φ). A negative φ
 * counts as none: it is not trusted to narrow an interval.
 * Bayley and Hammersley, J. R. Stat. Soc. Suppl. 8 (1946) 184, doi:10.2307/2983560.
 */
export function varianceInflation(correlation: number): number {
  const phi = Math.min(Math.max(correlation, 0), STRONGEST);
  return (1 + phi) / (1 - phi);
}

/** How many independent values say as much as these, at least 1. */
export function effectiveSamples(count: number, correlation: number): number {
  return Math.max(1, count / varianceInflation(correlation));
}

const productSum = (values: readonly number[], lag: number) =>
  values.slice(lag).reduce((sum, it, i) => sum + it * values[i], 0);
