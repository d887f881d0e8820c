/** Whether a figure goes with the wind, from night to night. */
import { max, mean, min, quantile } from 'simple-statistics';
import type { Estimate } from '../../assessment.ts';
import { linearLeastSquares } from '../../maths/leastSquares.ts';
import { halfWidth } from '../../maths/studentT.ts';

export interface WindyNight {
  /** [m/s] */
  readonly wind: number;
  readonly value: number;
}

export interface GoesWithWind {
  /** From a calm night to a windy one. */
  readonly change: Estimate;
  /** One standard error of it, with so many degrees of freedom. */
  readonly se: number;
  readonly degreesOfFreedom: number;
  /** What it comes to in a windy night, and the standard error of that. */
  readonly whenWindy: number;
  readonly whenWindySe: number;
  /** Lower and upper quartile of the nights [m/s]. */
  readonly calm: number;
  readonly windy: number;
  readonly nights: number;
}

/** Fewer nights tell wind from nothing. PRACTICE. */
const FEWEST_NIGHTS = 6;
/** Between the calmest night and the windiest [m/s]. PRACTICE. */
const LEAST_RANGE = 2;

/** Whether the nights are many and unlike enough to tell. */
export const windVaries = (winds: readonly number[]): boolean =>
  winds.length >= FEWEST_NIGHTS && max([...winds]) - min([...winds]) >= LEAST_RANGE;

/** A straight line through the nights; null where they are few or alike. */
export function goesWithWind(nights: readonly WindyNight[]): GoesWithWind | null {
  const winds = nights.map(({ wind }) => wind);
  if (!windVaries(winds)) return null;
  const centre = mean(winds);
  const fit = linearLeastSquares(
    winds.map((wind) => [1, wind - centre]),
    nights.map(({ value }) => value),
  );
  if (fit.kind === 'not fitted') return null;
  const { coefficients, covariance, degreesOfFreedom } = fit;
  const [calm, windy] = [quantile(winds, 0.25), quantile(winds, 0.75)];
  const value = coefficients[1] * (windy - calm);
  const se = Math.sqrt(covariance[1][1]) * (windy - calm);
  const half = halfWidth(se, degreesOfFreedom);
  return {
    change: { value, low: value - half, high: value + half },
    se,
    degreesOfFreedom,
    whenWindy: coefficients[0] + coefficients[1] * (windy - centre),
    whenWindySe: Math.sqrt(covariance[0][0] + covariance[1][1] * (windy - centre) ** 2),
    calm,
    windy,
    nights: nights.length,
  };
}
