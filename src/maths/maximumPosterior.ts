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
  /** The same with parameter `k` alone moved away from `at`, where much of the work can be shared. */
  around?(at: Float64Array): (k: number, moved: Float64Array, out: Float64Array) => void;
  /** Called before each part of the search, of which there are at most `mostRounds`: it may throw, to end it. */
  onRound?(): void;
}

export interface Maximum {
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
}

export interface Posterior extends Maximum {
  /** (JᵀJ + P)⁻¹, P holding one over the variances beforehand. */
  readonly covariance: Matrix;
  /** JᵀJ alone: what the data know. */
  readonly information: Matrix;
}

/** Of a search: rounds with a Jacobian of their own, of which it seldom needs as many. */
export const mostRounds = 12;
const MOST_STEPS = 8;
/** A smaller reduction of the sum of squares, misfit and priors, ends the search: a seventh of a standard deviation. */
const SMALL_REDUCTION = 0.02;
/** Of the covariance: where residuals bend, as films do when a face is as warm as the air, a narrow step sees the bend only. */
const WIDE = 0.05;
/** Step of the differences, in prior standard deviations. */
const REACH = 1e-3;

/**
 * The maximum of the posterior, with the normal approximation there (Laplace).
 *
 * @returns null where the residuals are not finite or the search finds no way down
 * @see Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, 4.1 (normal approximation)
 */
export function maximumPosterior(problem: PosteriorProblem): Posterior | null {
  const maximum = searchMaximum(problem);
  return maximum && normalAround(problem, maximum);
}

/** The maximum alone, by damped Gauss and Newton steps from the start; null as `maximumPosterior` is. */
export function searchMaximum(problem: PosteriorProblem): Maximum | null {
  const { count, priors, start, residuals, onRound } = problem;
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
  for (let round = 0; round < mostRounds; round++) {
    onRound?.();
    differentiate(problem, parameters, current, jacobian);
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
  return { parameters, residuals: current };
}

/** How sure the parameters are about the maximum; null where they are not. */
function normalAround(problem: PosteriorProblem, maximum: Maximum): Posterior | null {
  problem.onRound?.();
  const information = informationAt(problem, maximum.parameters);
  const covariance = covarianceOf(information, problem.priors);
  return covariance && { ...maximum, covariance, information };
}

/** JᵀJ at parameters: what such residuals tell of them. */
export function informationAt(problem: PosteriorProblem, at: Float64Array): Matrix {
  const { count, priors } = problem;
  const jacobian = priors.map(() => new Float64Array(count));
  differentiateWide(problem, at, jacobian);
  return matrixOf(priors.length, (i, j) => dot(jacobian[i], jacobian[j]));
}

/** (JᵀJ + P)⁻¹; null where it is singular. */
export const covarianceOf = (information: Matrix, priors: PosteriorProblem['priors']): Matrix | null =>
  inverseOf(matrixOf(priors.length, (i, j) => information[i][j] + (i === j ? 1 / priors[i].sd ** 2 : 0)));

/** Residuals with one parameter alone moved by `reach`, told apart by its place. */
function movedAround({ residuals, around }: PosteriorProblem, at: Float64Array) {
  const near = around?.(at) ?? ((_: number, moved: Float64Array, out: Float64Array) => residuals(moved, out));
  return (k: number, reach: number, out: Float64Array) => {
    const moved = at.slice();
    moved[k] = at[k] + reach;
    near(k, moved, out);
  };
}

function differentiate(
  problem: PosteriorProblem,
  at: Float64Array,
  current: Float64Array,
  out: readonly Float64Array[],
): void {
  const residualsAt = movedAround(problem, at);
  for (const [k, column] of out.entries()) {
    const reach = REACH * problem.priors[k].sd;
    residualsAt(k, reach, column);
    for (let i = 0; i < column.length; i++) column[i] = (column[i] - current[i]) / reach;
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
function differentiateWide(problem: PosteriorProblem, at: Float64Array, out: readonly Float64Array[]): void {
  const residualsAt = movedAround(problem, at);
  for (const [k, column] of out.entries()) {
    const reach = WIDE * problem.priors[k].sd;
    const below = new Float64Array(column.length);
    residualsAt(k, -reach, below);
    residualsAt(k, reach, column);
    for (let i = 0; i < column.length; i++) column[i] = (column[i] - below[i]) / (2 * reach);
  }
}
