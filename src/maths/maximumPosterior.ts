/** Parameters that the data and what was believed before agree on best, with how sure they are. */
import { dot, type Matrix, matrixOf, solvePositiveDefinite } from './matrix.ts';

export interface PosteriorProblem {
  /** The number of residuals, n, each in units of its own standard deviation. */
  readonly count: number;
  /** Mean and standard deviation of each parameter beforehand, independent of each other; length p. */
  readonly priors: readonly { readonly mean: number; readonly sd: number }[];
  /** Where the search begins; the prior means when not given. */
  readonly start?: Float64Array;
  /** Writes the n residuals at the parameters into `out`. */
  residuals(parameters: Float64Array, out: Float64Array): void;
}

export interface Posterior {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  /** (JᵀJ + P)⁻¹, P holding one over the variances beforehand. */
  readonly covariance: Matrix;
  /** JᵀJ alone: what the data know. */
  readonly information: Matrix;
}

const MOST_JACOBIANS = 12;
const MOST_STEPS = 8;
/** A smaller reduction of the sum of squares, misfit and priors, ends the search: a seventh of a standard deviation. */
const SMALL_REDUCTION = 0.02;
/** Of the covariance: where residuals bend, as films do when a face is as warm as the air, a narrow step sees the bend only. */
const WIDE = 0.05;
/** Step of the differences, in prior standard deviations. */
const REACH = 1e-3;

/**
 * The maximum of the posterior by damped Gauss and Newton steps from the prior means, and the normal
 * approximation there (Laplace).
 *
 * @returns null where the residuals are not finite or the search finds no way down
 * @see Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, 4.1 (normal approximation)
 */
export function maximumPosterior({ count, priors, start, residuals }: PosteriorProblem): Posterior | null {
  const size = priors.length;
  let parameters = start ?? Float64Array.from(priors, ({ mean }) => mean);
  let current = new Float64Array(count);
  let trial = new Float64Array(count);
  const jacobian = priors.map(() => new Float64Array(count));
  const away = (at: Float64Array) =>
    priors.reduce((sum, { mean, sd }, k) => sum + ((at[k] - mean) / sd) ** 2, 0);
  residuals(parameters, current);
  let objective = dot(current, current) + away(parameters);
  if (!Number.isFinite(objective)) return null;
  let damping = 1e-3;
  for (let round = 0; round < MOST_JACOBIANS; round++) {
    differentiate(residuals, parameters, current, priors, jacobian);
    const information = matrixOf(size, (i, j) => (j > i ? 0 : dot(jacobian[i], jacobian[j])));
    const before = objective;
    let hoped = 0;
    for (let attempt = 0; attempt < MOST_STEPS; attempt++) {
      const gradient = jacobian.map(
        (column, k) => dot(column, current) + (parameters[k] - priors[k].mean) / priors[k].sd ** 2,
      );
      const normal = matrixOf(size, (i, j) =>
        j > i ? 0 : information[i][j] + (i === j ? (1 + damping) / priors[i].sd ** 2 : 0),
      );
      const step = solvePositiveDefinite(
        normal,
        gradient.map((it) => -it),
      );
      if (step === null) return null;
      const tried = parameters.map((it, k) => it + step[k]);
      residuals(tried, trial);
      const reached = dot(trial, trial) + away(tried);
      const promised = -dot(gradient, step);
      hoped = Math.max(hoped, promised);
      if (reached <= objective) {
        const reduction = objective - reached;
        parameters = tried;
        [current, trial] = [trial, current];
        objective = reached;
        damping /= 4;
        // The Jacobian serves on as long as steps keep half of what they promise.
        if (reduction <= SMALL_REDUCTION || reduction < promised / 2) break;
      } else if (objective < before) break;
      else damping = Math.max(1, damping * 8);
    }
    if (round === 0 && start === undefined && objective === before && hoped > SMALL_REDUCTION) return null;
    if (before - objective <= SMALL_REDUCTION) break;
  }
  differentiateWide(residuals, parameters, priors, jacobian);
  const information = matrixOf(size, (i, j) => dot(jacobian[i], jacobian[j]));
  const covariance = inverseOf(
    matrixOf(size, (i, j) => information[i][j] + (i === j ? 1 / priors[i].sd ** 2 : 0)),
  );
  return covariance === null ? null : { parameters, residuals: current, covariance, information };
}

function differentiate(
  residuals: PosteriorProblem['residuals'],
  at: Float64Array,
  current: Float64Array,
  priors: PosteriorProblem['priors'],
  out: readonly Float64Array[],
): void {
  const shifted = at.slice();
  for (const [k, column] of out.entries()) {
    shifted[k] = at[k] + REACH * priors[k].sd;
    residuals(shifted, column);
    for (let i = 0; i < column.length; i++) column[i] = (column[i] - current[i]) / (REACH * priors[k].sd);
    shifted[k] = at[k];
  }
}

function inverseOf(matrix: Matrix): Matrix | null {
  const columns = matrix.map((_, k) =>
    solvePositiveDefinite(
      matrix,
      matrix.map((__, i) => (i === k ? 1 : 0)),
    ),
  );
  const known = columns.filter((it) => it !== null);
  return known.length < columns.length ? null : known.map((column) => Array.from(column));
}

/** Central differences over a twentieth of a prior standard deviation to either side. */
function differentiateWide(
  residuals: PosteriorProblem['residuals'],
  at: Float64Array,
  priors: PosteriorProblem['priors'],
  out: readonly Float64Array[],
): void {
  const shifted = at.slice();
  for (const [k, column] of out.entries()) {
    const reach = WIDE * priors[k].sd;
    const below = new Float64Array(column.length);
    shifted[k] = at[k] - reach;
    residuals(shifted, below);
    shifted[k] = at[k] + reach;
    residuals(shifted, column);
    for (let i = 0; i < column.length; i++) column[i] = (column[i] - below[i]) / (2 * reach);
    shifted[k] = at[k];
  }
}
