/** Nonlinear least squares. */
import { leastSquaresOfColumns } from './leastSquares.ts';
import { dot, type Matrix, matrixOf, solvePositiveDefinite } from './matrix.ts';

export interface NonlinearProblem {
  /** The number of residuals, n. */
  readonly count: number;
  /** Where the search begins; length p. */
  readonly start: readonly number[];
  /** Writes the n residuals at the parameters into `out`. NaN or Infinity bars the way to these parameters. */
  residuals(parameters: Float64Array, out: Float64Array): void;
  /** Writes the derivative of the residuals by parameter k into `out[k]`; central differences when not given. */
  jacobian?(parameters: Float64Array, out: readonly Float64Array[]): void;
  /** The usual size of each parameter, for the central differences; that of the start when not given. */
  readonly typical?: readonly number[];
}

export type NonlinearFit =
  | {
      readonly kind: 'fitted';
      readonly parameters: Float64Array;
      /** Residual variance times (JᵀJ)⁻¹ at the solution. */
      readonly covariance: Matrix;
      readonly residuals: Float64Array;
      readonly sumOfSquares: number;
      readonly residualStandardDeviation: number;
      readonly degreesOfFreedom: number;
      readonly iterations: number;
      /** What ended the search. */
      readonly stopped: 'gradient' | 'step' | 'reduction';
    }
  | {
      readonly kind: 'not fitted';
      readonly reason:
        | 'too few'
        | 'not finite at the start'
        | 'rank deficient'
        | 'stalled'
        | 'too many iterations';
    };

const MOST_ITERATIONS = 1000;
/** Cosine of the angle between the residuals and each column of the Jacobian. */
const SMALL_GRADIENT = 1e-10;
/** Scaled step, relative to the scaled parameters. */
const SMALL_STEP = 1e-11;
/** Predicted and actual reduction of the sum of squares, relative to it. */
const SMALL_REDUCTION = 1e-15;
/** An undamped step from the solution that is relatively longer than this shows that it is none. */
const SETTLED_STEP = 1e-5;

/**
 * Finds the parameters of the least sum of squared residuals by Levenberg and Marquardt's method.
 *
 * Damping by Nielsen's rule (Madsen, Nielsen and Tingleff, Methods for Non-linear Least Squares Problems,
 * 2nd ed. 2004, algorithm 3.16); scaled by the longest columns of the Jacobian met so far, and stopped, after
 * Moré (Lecture Notes in Mathematics 630 (1978) 105, doi:10.1007/BFb0067700).
 *
 * @returns 'too few' without more residuals than parameters; 'rank deficient' when the data cannot tell the
 *          parameters apart; 'stalled' when no step, however short, lowers the sum though it is not least
 */
export function levenbergMarquardt(problem: NonlinearProblem): NonlinearFit {
  const size = problem.start.length;
  if (size === 0 || problem.count <= size) return { kind: 'not fitted', reason: 'too few' };

  let parameters = Float64Array.from(problem.start);
  let residuals = new Float64Array(problem.count);
  problem.residuals(parameters, residuals);
  let sumOfSquares = dot(residuals, residuals);
  if (!Number.isFinite(sumOfSquares)) return { kind: 'not fitted', reason: 'not finite at the start' };

  let trial = new Float64Array(size);
  let trialResiduals = new Float64Array(problem.count);
  const jacobian = problem.start.map(() => new Float64Array(problem.count));
  const scale = new Float64Array(size);
  let damping = 1e-3;
  let growth = 2;
  let moved = true;

  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations++) {
    if (moved) differentiate(problem, parameters, jacobian, trialResiduals);
    const gradient = jacobian.map((column) => dot(column, residuals));
    const length = jacobian.map((column) => Math.sqrt(dot(column, column)));
    for (let k = 0; k < size; k++) scale[k] = Math.max(scale[k], length[k]) || 1;
    const finish = (stopped: 'gradient' | 'step' | 'reduction') =>
      conclude(jacobian, { parameters, residuals, sumOfSquares, iterations, stopped });

    const slack = SMALL_GRADIENT * Math.sqrt(sumOfSquares);
    if (gradient.every((it, k) => Math.abs(it) <= slack * length[k])) return finish('gradient');

    const step = dampedStep(jacobian, gradient, scale, damping);
    if (step !== null) {
      const scaledStep = step.map((it, k) => it * scale[k]);
      if (norm(scaledStep) <= SMALL_STEP * norm(parameters.map((it, k) => it * scale[k])))
        return finish('step');

      for (let k = 0; k < size; k++) trial[k] = parameters[k] + step[k];
      problem.residuals(trial, trialResiduals);
      const trialSum = dot(trialResiduals, trialResiduals);
      const predicted = damping * dot(scaledStep, scaledStep) - dot(gradient, step);
      const actual = sumOfSquares - trialSum;
      if (Math.max(predicted, Math.abs(actual)) <= SMALL_REDUCTION * sumOfSquares) return finish('reduction');

      moved = actual > 0;
      if (moved) {
        [parameters, trial] = [trial, parameters];
        [residuals, trialResiduals] = [trialResiduals, residuals];
        sumOfSquares = trialSum;
        damping *= Math.max(1 / 3, 1 - (2 * (actual / predicted) - 1) ** 3);
        growth = 2;
      }
    } else moved = false;
    if (!moved) {
      damping *= growth;
      growth *= 2;
    }
  }
  return { kind: 'not fitted', reason: 'too many iterations' };
}

const norm = (vector: Float64Array) => Math.sqrt(dot(vector, vector));

/** @param room length n, for residuals that are forgotten again */
function differentiate(
  problem: NonlinearProblem,
  parameters: Float64Array,
  out: readonly Float64Array[],
  room: Float64Array,
): void {
  if (problem.jacobian !== undefined) problem.jacobian(parameters, out);
  else centralDifferences(problem, parameters, out, room);
}

/** Over the cube root of the machine precision times the parameter, or a thousandth of its typical size. */
function centralDifferences(
  problem: NonlinearProblem,
  parameters: Float64Array,
  out: readonly Float64Array[],
  below: Float64Array,
): void {
  const shifted = parameters.slice();
  for (const [k, above] of out.entries()) {
    const typical = Math.abs(problem.typical?.[k] ?? problem.start[k]) || 1;
    const reach = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(parameters[k]), typical / 1000);
    shifted[k] = parameters[k] - reach;
    problem.residuals(shifted, below);
    const from = shifted[k];
    shifted[k] = parameters[k] + reach;
    problem.residuals(shifted, above);
    for (let i = 0; i < above.length; i++) above[i] = (above[i] - below[i]) / (shifted[k] - from);
    shifted[k] = parameters[k];
  }
}

/** Solves (JᵀJ + damping·scale²)·step = −gradient, in scaled parameters. */
function dampedStep(
  jacobian: readonly Float64Array[],
  gradient: readonly number[],
  scale: Float64Array,
  damping: number,
): Float64Array | null {
  const normal = matrixOf(scale.length, (i, j) =>
    j > i ? 0 : dot(jacobian[i], jacobian[j]) / (scale[i] * scale[j]) + (i === j ? damping : 0),
  );
  const scaled = solvePositiveDefinite(
    normal,
    gradient.map((it, k) => -it / scale[k]),
  );
  return scaled === null ? null : scaled.map((it, k) => it / scale[k]);
}

type Solution = Pick<
  Extract<NonlinearFit, { kind: 'fitted' }>,
  'parameters' | 'residuals' | 'sumOfSquares' | 'iterations' | 'stopped'
>;

/** Makes sure that the search ended at a least sum, and adds how sure the parameters are. */
function conclude(jacobian: readonly Float64Array[], solution: Solution): NonlinearFit {
  const undamped = leastSquaresOfColumns(jacobian, solution.residuals);
  if (undamped.kind === 'not fitted')
    return { kind: 'not fitted', reason: undamped.reason === 'not finite' ? 'stalled' : undamped.reason };
  const lengthAlong = (vector: Float64Array) =>
    norm(vector.map((it, k) => it * Math.sqrt(dot(jacobian[k], jacobian[k]))));
  const settled = lengthAlong(undamped.coefficients) <= SETTLED_STEP * lengthAlong(solution.parameters);
  if (solution.stopped !== 'gradient' && !settled) return { kind: 'not fitted', reason: 'stalled' };

  const { degreesOfFreedom } = undamped;
  const variance = solution.sumOfSquares / degreesOfFreedom;
  return {
    kind: 'fitted',
    ...solution,
    covariance: undamped.inverse.map((row) => row.map((it) => it * variance)),
    residualStandardDeviation: Math.sqrt(variance),
    degreesOfFreedom,
  };
}
