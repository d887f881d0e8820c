/** Many nights, one time constant. */
import type { Estimate } from '../assessment.ts';
import { logInterval } from '../maths/logInterval.ts';
import { poolRandomEffects } from '../maths/pooling.ts';
import { studentTQuantile } from '../maths/studentT.ts';
import type { JudgedNight } from './judge.ts';

export interface PooledTimeConstant {
  /** [s], with a t-interval */
  readonly timeConstant: Estimate;
  /** Standard error of its logarithm [–]. */
  readonly logSe: number;
  readonly degreesOfFreedom: number;
  /** Standard deviation of the logarithm from night to night, beyond the nights' own errors [–]. */
  readonly betweenNights: number;
  readonly nights: number;
}

/**
 * The nights' time constants pooled on the logarithm by random effects (REML), because wind and what the house
 * kept from the day differ from night to night and belong in the interval.
 *
 * @returns null with fewer than two nights: one night has no spread to judge by
 */
export function poolTimeConstants(nights: readonly JudgedNight[]): PooledTimeConstant | null {
  const fits = nights.flatMap(({ used, fit }) => (used && fit?.kind === 'fitted' ? [fit] : []));
  const pooled = poolRandomEffects(
    fits.map((fit) => Math.log(fit.timeConstant.value)),
    fits.map((fit) => fit.logSe ** 2),
  );
  if (pooled.kind === 'not pooled') return null;
  const { mean, se, degreesOfFreedom, betweenVariance } = pooled;
  return {
    timeConstant: logInterval(Math.exp(mean), se, 0, studentTQuantile(0.975, degreesOfFreedom)),
    logSe: se,
    degreesOfFreedom,
    betweenNights: Math.sqrt(betweenVariance),
    nights: fits.length,
  };
}
