/** The Kalman filter of a small linear system whose first state is observed. */
import type { Step } from './discretise.ts';
import type { Matrix } from './matrix.ts';

export interface Filtered {
  /** Of the observation before it is used: observed less foretold, and its variance. One for each observation made. */
  readonly innovations: Float64Array;
  readonly variances: Float64Array;
}

export interface Observed {
  /** What is observed of the first state; NaN where nothing is. */
  readonly observations: Float64Array;
  readonly observationVariance: number;
  /** One series for each input of the steps, as long as the observations. */
  readonly inputs: readonly Float64Array[];
  /** The kinds of step, and which leads from each instant to the next. */
  readonly steps: readonly Step[];
  readonly kind: Uint8Array;
  /** Before the first observation. */
  readonly start: { readonly state: readonly number[]; readonly covariance: Matrix };
}

/**
 * Innovations and their variances, in the order of the observations. With them the log-likelihood of all observations
 * together is −½ Σ (innovation² / variance + ln variance + ln 2π).
 *
 * @see Kalman, J. Basic Eng. 82 (1960) 35, doi:10.1115/1.3662552; Schweppe, IEEE Trans. Inf. Theory 11 (1965) 61
 *      (the likelihood by innovations)
 */
export function kalmanFilter(
  { observations, observationVariance, inputs, steps, kind, start }: Observed,
  into: Filtered,
): void {
  const size = start.state.length;
  const state = Float64Array.from(start.state);
  const spread = flat(start.covariance);
  const moved = new Float64Array(size);
  const half = new Float64Array(size * size);
  const flatSteps = steps.map(({ transition, covariance, atStart, atEnd }) => ({
    transition: flat(transition),
    covariance: flat(covariance),
    atStart: flat(atStart),
    atEnd: flat(atEnd),
  }));
  let seen = 0;
  for (let t = 0; t < observations.length; t++) {
    if (!Number.isNaN(observations[t])) {
      const variance = spread[0] + observationVariance;
      const innovation = observations[t] - state[0];
      into.innovations[seen] = innovation;
      into.variances[seen] = variance;
      seen++;
      for (let i = 0; i < size; i++) moved[i] = spread[i * size];
      for (let i = 0; i < size; i++) {
        state[i] += (moved[i] / variance) * innovation;
        for (let j = 0; j < size; j++) spread[i * size + j] -= (moved[i] * moved[j]) / variance;
      }
    }
    if (t + 1 === observations.length) break;
    const { transition, covariance, atStart, atEnd } = flatSteps[kind[t]];
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += transition[i * size + j] * state[j];
      for (let k = 0; k < inputs.length; k++)
        sum += atStart[k * size + i] * inputs[k][t] + atEnd[k * size + i] * inputs[k][t + 1];
      moved[i] = sum;
      for (let j = 0; j < size; j++) {
        let entry = 0;
        for (let k = 0; k < size; k++) entry += transition[i * size + k] * spread[k * size + j];
        half[i * size + j] = entry;
      }
    }
    state.set(moved);
    for (let i = 0; i < size; i++)
      for (let j = 0; j <= i; j++) {
        let entry = covariance[i * size + j];
        for (let k = 0; k < size; k++) entry += half[i * size + k] * transition[j * size + k];
        spread[i * size + j] = entry;
        spread[j * size + i] = entry;
      }
  }
}

const flat = (matrix: Matrix) => Float64Array.from(matrix.flat());
