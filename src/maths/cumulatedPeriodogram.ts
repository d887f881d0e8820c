/** Whether a series has rhythms that chance would not give it. */

export interface CumulatedPeriodogram {
  /** At the frequencies k/n, k from 1 to below n/2: the share of the variance up to there, 0 to 1. */
  readonly share: Float64Array;
  /** The largest distance of that from a straight line. */
  readonly distance: number;
  /** That it stays below for 95 in 100 series of independent values. */
  readonly bound: number;
}

/**
 * The normalised cumulated periodogram with Kolmogorov's bound. Of independent normal values the shares at the first
 * m = q − 1 of q frequencies are m sorted values drawn evenly between 0 and 1.
 *
 * @param values evenly spaced, without NaN, at least five
 * @see Box, Jenkins and Reinsel, Time Series Analysis, 4th ed. 2008, 8.2.5; Bartlett, An Introduction to Stochastic
 *      Processes, 1955, 9.2.1. The bound: 1.358 / (√m + 0.12 + 0.11/√m), Stephens, J. R. Stat. Soc. B 32 (1970) 115
 */
export function cumulatedPeriodogram(values: ArrayLike<number>): CumulatedPeriodogram {
  const count = values.length;
  const free = Math.ceil(count / 2) - 2;
  if (free < 1) throw new RangeError('at least five values');
  const all = Float64Array.from(values);
  const mean = all.reduce((sum, it) => sum + it, 0) / count;
  const turn = Float64Array.from({ length: count }, (_, t) => (2 * Math.PI * t) / count);
  const cosine = turn.map(Math.cos);
  const sine = turn.map(Math.sin);
  const share = new Float64Array(free + 1);
  let sum = 0;
  for (let k = 1; k <= free + 1; k++) {
    let cosines = 0;
    let sines = 0;
    for (let t = 0; t < count; t++) {
      const at = (k * t) % count;
      cosines += (all[t] - mean) * cosine[at];
      sines += (all[t] - mean) * sine[at];
    }
    sum += cosines ** 2 + sines ** 2;
    share[k - 1] = sum;
  }
  let distance = 0;
  for (let k = 0; k <= free; k++) {
    share[k] /= sum;
    if (k < free) distance = Math.max(distance, (k + 1) / free - share[k], share[k] - k / free);
  }
  const root = Math.sqrt(free);
  return { share, distance, bound: 1.358 / (root + 0.12 + 0.11 / root) };
}
