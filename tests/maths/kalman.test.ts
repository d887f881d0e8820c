import { describe, expect, test } from 'vitest';
import { discretise } from '../../src/maths/discretise.ts';
import { kalmanFilter, type Observed } from '../../src/maths/kalman.ts';
import { type Matrix, matrixOf, product, transposed } from '../../src/maths/matrix.ts';
import { random } from '../proving/random.ts';

const drift = [
  [-5e-4, 3e-4, 1e-4],
  [2e-5, -3e-5, 0],
  [1e-5, 0, -1e-5],
];
const inputColumns = [[1e-4, 1e-5, 0]];
const known = discretise({ drift, inputs: inputColumns, noise: [3e-6, 1e-7, 2e-8] }, 1800);
const vague = discretise({ drift, inputs: inputColumns, noise: [3e-2, 1e-7, 2e-8] }, 1800);

function observed(gaps: readonly number[], vagueSteps: readonly number[]): Observed {
  const source = random(1, 'dense normal');
  const length = 30;
  return {
    observations: Float64Array.from({ length }, (_, t) =>
      gaps.includes(t) ? Number.NaN : 20 + source.normal(),
    ),
    observationVariance: 0.01,
    inputs: [Float64Array.from({ length }, () => 5 + 3 * source.normal())],
    steps: [known, vague],
    kind: Uint8Array.from({ length }, (_, t) => (vagueSteps.includes(t) ? 1 : 0)),
    start: {
      state: [20, 17, 19],
      covariance: [
        [1, 0.2, 0],
        [0.2, 4, 0],
        [0, 0, 2],
      ],
    },
  };
}

describe('the likelihood by innovations is that of all observations as one normal vector', () => {
  test.each([
    { what: 'without gaps', gaps: [], vagueSteps: [] },
    { what: 'with gaps', gaps: [0, 7, 8, 9, 20, 29], vagueSteps: [] },
    { what: 'with steps whose heat is not known', gaps: [12], vagueSteps: [3, 4, 5, 12, 13] },
  ])('$what', ({ gaps, vagueSteps }) => {
    const system = observed(gaps, vagueSteps);
    const seen = system.observations.filter((it) => !Number.isNaN(it)).length;
    const into = { innovations: new Float64Array(seen), variances: new Float64Array(seen) };
    kalmanFilter(system, into);
    let logLikelihood = 0;
    into.innovations.forEach((it, k) => {
      logLikelihood -= (it ** 2 / into.variances[k] + Math.log(2 * Math.PI * into.variances[k])) / 2;
    });
    // Rounding: thirty terms of the order of ten, a covariance whose condition is below 1e5.
    expect(Math.abs(logLikelihood - denseLogLikelihood(system))).toBeLessThan(1e-8);
  });
});

/** The mean and the covariance of all states at all instants, written out; then the normal density of what was seen. */
function denseLogLikelihood({
  observations,
  observationVariance,
  inputs,
  steps,
  kind,
  start,
}: Observed): number {
  const length = observations.length;
  const means: number[][] = [start.state.slice()];
  const own: Matrix[] = [start.covariance];
  for (let t = 0; t + 1 < length; t++) {
    const { transition, atStart, atEnd, covariance } = steps[kind[t]];
    means.push(
      transition.map(
        (row, i) =>
          row.reduce((sum, it, k) => sum + it * means[t][k], 0) +
          atStart[0][i] * inputs[0][t] +
          atEnd[0][i] * inputs[0][t + 1],
      ),
    );
    const carried = product(product(transition, own[t]), transposed(transition));
    own.push(matrixOf(3, (i, j) => carried[i][j] + covariance[i][j]));
  }
  // Between instants s < t: Cov(x_t, x_s) = Φ_{t−1} … Φ_s · Cov(x_s).
  const between = matrixOf(length, () => 0);
  for (let s = 0; s < length; s++) {
    let carried = own[s];
    for (let t = s; t < length; t++) {
      between[t][s] = carried[0][0];
      between[s][t] = carried[0][0];
      carried = product(steps[kind[t]].transition, carried);
    }
  }
  const seen = Array.from(observations.keys()).filter((t) => !Number.isNaN(observations[t]));
  const covariance = matrixOf(
    seen.length,
    (i, j) => between[seen[i]][seen[j]] + (i === j ? observationVariance : 0),
  );
  return logDensity(
    seen.map((t) => observations[t] - means[t][0]),
    covariance,
  );
}

/** By Gauss' elimination, so that nothing of the code under test is used. */
function logDensity(deviation: readonly number[], covariance: Matrix): number {
  const rows = covariance.map((row, i) => [...row, deviation[i]]);
  const size = rows.length;
  let logDeterminant = 0;
  let square = 0;
  for (let p = 0; p < size; p++) {
    logDeterminant += Math.log(rows[p][p]);
    square += rows[p][size] ** 2 / rows[p][p];
    for (let i = p + 1; i < size; i++) {
      const factor = rows[i][p] / rows[p][p];
      for (let j = p; j <= size; j++) rows[i][j] -= factor * rows[p][j];
    }
  }
  return -(square + logDeterminant + size * Math.log(2 * Math.PI)) / 2;
}
