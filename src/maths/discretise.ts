/** From a linear stochastic differential equation to one step of it, exactly. */
import { type Matrix, matrixOf, product, transposed } from './matrix.ts';
import { halvingsOf, matrixExponential } from './matrixExponential.ts';

/** dx = (drift·x + Σ inputs[k]·u_k) dt + dw, the w independent of each other. */
export interface ContinuousSystem {
  /** [1/s], n × n */
  readonly drift: Matrix;
  /** One column of n for each input. */
  readonly inputs: readonly (readonly number[])[];
  /** Variance that each state gathers per second; length n. */
  readonly noise: readonly number[];
}

/** x(t + step) = transition·x + Σ (atStart[k]·u_k(t) + atEnd[k]·u_k(t + step)) + noise. */
export interface Step {
  readonly transition: Matrix;
  /** For inputs that run straight from one instant to the next: one column of n for each. */
  readonly atStart: readonly (readonly number[])[];
  readonly atEnd: readonly (readonly number[])[];
  /** Covariance of what is added at random, n × n. */
  readonly covariance: Matrix;
}

/**
 * Exact for inputs that are straight between the instants.
 *
 * The inputs by one exponential of the system with the inputs and their slopes as further states; the noise by Van
 * Loan's block exponential over a fraction of the step, doubled until it is whole, so that fast states do not overflow.
 *
 * @param step [s]
 * @see Van Loan, Computing integrals involving the matrix exponential, IEEE Trans. Automat. Contr. 23 (1978) 395,
 *      doi:10.1109/TAC.1978.1101743
 */
export function discretise({ drift, inputs, noise }: ContinuousSystem, step: number): Step {
  const size = drift.length;
  const count = inputs.length;
  const whole = matrixExponential(
    matrixOf(size + 2 * count, (i, j) => {
      if (i < size) return step * (j < size ? drift[i][j] : j < size + count ? inputs[j - size][i] : 0);
      return i < size + count && j === i + count ? 1 : 0;
    }),
  );
  const column = (j: number) => Array.from({ length: size }, (_, i) => whole[i][j]);
  // The first column is the answer to an input held, the second to one that rises from nothing to one.
  const rising = inputs.map((_, k) => column(size + count + k));
  return {
    transition: whole.slice(0, size).map((row) => row.slice(0, size)),
    atStart: rising.map((rise, k) => column(size + k).map((held, i) => held - rise[i])),
    atEnd: rising,
    covariance: noiseOver(drift, noise, step),
  };
}

function noiseOver(drift: Matrix, noise: readonly number[], step: number): number[][] {
  const size = drift.length;
  const doublings = halvingsOf(drift.map((row) => row.map((it) => it * step)));
  const part = step / 2 ** doublings;
  const blocks = matrixExponential(
    matrixOf(2 * size, (i, j) => {
      if (i < size) return part * (j < size ? -drift[i][j] : i === j - size ? noise[i] : 0);
      return j < size ? 0 : part * drift[j - size][i - size];
    }),
  );
  let transition = matrixOf(size, (i, j) => blocks[size + j][size + i]);
  let covariance = product(
    transition,
    matrixOf(size, (i, j) => blocks[i][size + j]),
  );
  for (let k = 0; k < doublings; k++) {
    const carried = product(product(transition, covariance), transposed(transition));
    covariance = matrixOf(size, (i, j) => covariance[i][j] + carried[i][j]);
    transition = product(transition, transition);
  }
  return matrixOf(size, (i, j) => (covariance[i][j] + covariance[j][i]) / 2);
}
