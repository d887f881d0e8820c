/** Intervals of positive quantities, symmetric on the logarithm. */
import type { Estimate } from '../assessment.ts';

/** The 97.5 % point of the normal distribution. */
export const NORMAL_95 = 1.959963984540054;

/**
 * A 95 % interval of a positive quantity whose logarithm is uncertain.
 *
 * @param value    the estimate, in any unit, above zero
 * @param logSd    standard deviation of its natural logarithm [–]
 * @param logBias  mean of ln(truth / value) when the estimate is known to read low or high [–]
 * @param coverage the factor on the standard deviation; normal unless a t-quantile is given
 */
export function logInterval(value: number, logSd: number, logBias = 0, coverage = NORMAL_95): Estimate {
  return {
    value,
    low: value * Math.exp(logBias - coverage * logSd),
    high: value * Math.exp(logBias + coverage * logSd),
  };
}

/** The standard deviation of the logarithm that a 95 % interval stands for, taking it as normal. */
export const logSdOf = ({ low, high }: Estimate): number => Math.log(high / low) / (2 * NORMAL_95);
