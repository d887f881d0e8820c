/** Student's t: from a standard error and its degrees of freedom to an interval. */
import jStat from 'jstat';

/** The two ends of an interval, in the unit of the quantity. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * The value below which t lies with the given probability.
 *
 * @param probability      between 0 and 1
 * @param degreesOfFreedom above 0; Infinity gives the normal distribution
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError('the probability must lie between 0 and 1');
  if (!(degreesOfFreedom > 0)) throw new RangeError('the degrees of freedom must be above 0');
  return degreesOfFreedom === Number.POSITIVE_INFINITY
    ? jStat.normal.inv(probability, 0, 1)
    : jStat.studentt.inv(probability, degreesOfFreedom);
}

/** How far the two-sided interval reaches to either side, in the unit of the standard error. */
export function halfWidth(standardError: number, degreesOfFreedom: number, confidence = 0.95): number {
  return standardError * studentTQuantile((1 + confidence) / 2, degreesOfFreedom);
}

/** The two-sided 95 % interval about a mean. */
export function tInterval(mean: number, standardError: number, degreesOfFreedom: number): Interval {
  const reach = halfWidth(standardError, degreesOfFreedom);
  return { low: mean - reach, high: mean + reach };
}
