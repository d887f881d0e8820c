/** Days of heat against temperature difference and sun, in the forms of the standard. */
import { type LinearFit, linearLeastSquares } from '../../maths/leastSquares.ts';
import { neweyWest } from '../../maths/neweyWest.ts';
import type { HeatDay } from './heatDay.ts';

/**
 * The steady regression without intercept, heat = H·difference − R·irradiance.
 *
 * @returns the heat-loss coefficient H [W/K] first and the solar aperture R [m²] second, with their covariance
 * @see EN 17887-2:2024 (scope read; the form from memory); Jack et al. 2018
 */
export function coHeatingRegression(days: readonly HeatDay[]): LinearFit {
  return linearLeastSquares(
    rowsOf(days),
    days.map(({ heat }) => heat),
  );
}

/** The ratio form: the sum of all heat, the sun's [W] with it, over the sum of the differences [W/K]. */
export function heatOverDifference(
  days: readonly (Pick<HeatDay, 'heat' | 'difference'> & { readonly sun: number })[],
): number {
  return (
    days.reduce((sum, day) => sum + day.heat + day.sun, 0) /
    days.reduce((sum, { difference }) => sum + difference, 0)
  );
}

/** One row for each day: its difference, and less its irradiance where every day has one. */
export function rowsOf(days: readonly HeatDay[]): number[][] {
  const withSun = days.every(({ irradiance }) => irradiance !== null);
  return days.map(({ difference, irradiance }) =>
    withSun ? [difference, -(irradiance ?? 0)] : [difference],
  );
}

/** By how much errors that hang together from day to day exceed plain ones; never less than 1. */
export function robustOverPlain(
  days: readonly HeatDay[],
  plain: Extract<LinearFit, { readonly kind: 'fitted' }>,
): number {
  // The lag that Newey and West (Rev. Econ. Stud. 61 (1994) 631) take by rule of thumb: 2 for ten days.
  const lag = Math.floor(4 * (days.length / 100) ** (2 / 9));
  const robust = neweyWest(rowsOf(days), plain, lag)[0][0];
  return Math.max(1, Math.sqrt(robust / plain.covariance[0][0]) || 1);
}

/** Variance inflation of 10, from which columns count as collinear (PRACTICE): this correlation without intercept. */
const TOO_TIED = Math.sqrt(0.9);

/** Whether sun and difference rise and fall together. */
export function sunTied(days: readonly HeatDay[]): boolean {
  const x = days.map(({ difference }) => difference);
  const y = days.map(({ irradiance }) => irradiance ?? 0);
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * b[i], 0);
  return dot(x, y) / Math.sqrt(dot(x, x) * dot(y, y)) > TOO_TIED;
}
