/** The normal distribution. */
import jStat from 'jstat';

/** How likely a standard normal value is at most so large [–]. */
export const normalProbability = (value: number): number => jStat.normal.cdf(value, 0, 1);
