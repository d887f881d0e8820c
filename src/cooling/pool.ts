/** Many nights, one time constant. */
import type { Estimate } from '../assessment.ts';
import { logInterval, NORMAL_95 } from '../maths/logInterval.ts';
import { poolRandomEffects } from '../maths/pooling.ts';
import { studentTQuantile } from '../maths/studentT.ts';
import type { JudgedNight } from './judge.ts';

export interface PooledTimeConstant {
  /** [s], with a t-interval widened by what the loggers may be off */
  readonly timeConstant: Estimate;
  /** Standard error of its logarithm from the nights alone, which the same loggers in another stage share [–]. */
  readonly logSe: number;
  readonly degreesOfFreedom: number;
  /** Standard deviation of the logarithm from night to night, beyond the nights' own errors [–]. */
  readonly betweenNights: number;
  readonly nights: number;
  /** Mean inside less what drives the fall over them [K]. */
  readonly meanDifference: number;
}

/**
 * The nights' time constants pooled on the logarithm by random effects (REML), because wind and what the house
 * kept from the day differ from night to night and belong in the interval.
 *
 * @param differenceSd what the loggers may be off, in inside less outside [K]; a rate of cooling is read against it
 * @returns null with fewer than two nights: one night has no spread to judge by
 */
export function poolTimeConstants(
  nights: readonly JudgedNight[],
  differenceSd: number,
): PooledTimeConstant | null {
  const used = nights.flatMap(({ used, fit, drivingDifference }) =>
    used && fit?.kind === 'fitted' && drivingDifference !== null ? [{ fit, drivingDifference }] : [],
  );
  const fits = used.map(({ fit }) => fit);
  const pooled = poolRandomEffects(
    fits.map((fit) => Math.log(fit.timeConstant.value)),
    fits.map((fit) => fit.logSe ** 2),
  );
  if (pooled.kind === 'not pooled') return null;
  const { mean, se, degreesOfFreedom, betweenVariance } = pooled;
  const meanDifference = used.reduce((sum, night) => sum + night.drivingDifference, 0) / used.length;
  const half = Math.hypot(
    studentTQuantile(0.975, degreesOfFreedom) * se,
    (NORMAL_95 * differenceSd) / meanDifference,
  );
  return {
    timeConstant: logInterval(Math.exp(mean), half, 0, 1),
    logSe: se,
    degreesOfFreedom,
    betweenNights: Math.sqrt(betweenVariance),
    nights: fits.length,
    meanDifference,
  };
}
