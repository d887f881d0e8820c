/** Parameters of a Gaussian model by its innovations, and by what was believed beforehand. */
import { dot, type Matrix, matrixOf, solvePositiveDefinite } from './matrix.ts';

export interface Prior {
  readonly mean: number;
  readonly sd: number;
}

export interface InnovationProblem {
  /** The number of innovations, n. */
  readonly count: number;
  /** Of each parameter beforehand, independent of each other; length p. */
  readonly priors: readonly Prior[];
  readonly start: Float64Array;
  /** Writes the n innovations and their variances at the parameters. NaN bars the way to these parameters. */
  innovate(parameters: Float64Array, innovations: Float64Array, variances: Float64Array): void;
}

export interface ScoringFit {
  readonly parameters: Float64Array;
  /** −2 ln likelihood, and that with −2 ln of the priors added, each less its constant n ln 2π. */
  readonly deviance: number;
  readonly objective: number;
  readonly innovations: Float64Array;
  readonly variances: Float64Array;
}

const MOST_ROUNDS = 40;
const MOST_ATTEMPTS = 8;
/** A fall of the objective below this ends the search: of a standard deviation a seventh. */
const SMALL_FALL = 0.02;
/** A small fall under a strong damping is a short step, not the end. */
const SMALL_DAMPING = 0.1;
const LEAST_DAMPING = 1e-4;
/** Of a step along any parameter, in prior standard deviations: further away the expected information is another. */
const LONGEST = 1;
/** Of the differences, in prior standard deviations. */
const REACH = 1e-4;

/**
 * The maximum of the posterior by damped Fisher scoring: the expected information of Gaussian innovations,
 * Σ (∂ν ∂νᵀ / S + ½ ∂S ∂Sᵀ / S²), stands for the second derivatives.
 *
 * @returns null where the start is barred
 * @see Cavanaugh and Shumway, Statistics and Probability Letters 26 (1996) 347 (expected information of a state-space
 *      model by its innovations; from memory)
 */
export function fisherScoring(problem: InnovationProblem): ScoringFit | null {
  const { priors } = problem;
  let current = evaluate(problem, problem.start);
  if (!Number.isFinite(current.objective)) return null;
  let damping = 1e-2;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { gradient, information } = slopes(problem, current);
    const before = current.objective;
    for (let attempt = 0; attempt < MOST_ATTEMPTS && current.objective === before; attempt++) {
      const tried = evaluate(problem, stepFrom(current.parameters, gradient, information, damping, priors));
      if (tried.objective < before) {
        current = tried;
        damping = Math.max(LEAST_DAMPING, damping / 8);
      } else damping = Math.max(1e-2, damping * 8);
    }
    const fall = before - current.objective;
    if (!(fall > SMALL_FALL || (fall > 0 && damping > SMALL_DAMPING))) break;
  }
  return current;
}

function stepFrom(
  from: Float64Array,
  gradient: readonly number[],
  information: Matrix,
  damping: number,
  priors: readonly Prior[],
): Float64Array {
  const step = solvePositiveDefinite(
    matrixOf(gradient.length, (i, j) => information[i][j] * (i === j ? 1 + damping : 1)),
    gradient.map((it) => -it),
  );
  if (step === null) return from;
  const share = Math.min(1, ...step.map((it, k) => (LONGEST * priors[k].sd) / Math.abs(it)));
  return from.map((it, k) => it + share * step[k]);
}

function evaluate({ count, priors, innovate }: InnovationProblem, parameters: Float64Array): ScoringFit {
  const innovations = new Float64Array(count);
  const variances = new Float64Array(count);
  innovate(parameters, innovations, variances);
  let deviance = 0;
  for (let t = 0; t < count; t++) deviance += innovations[t] ** 2 / variances[t] + Math.log(variances[t]);
  const away = priors.reduce((sum, { mean, sd }, k) => sum + ((parameters[k] - mean) / sd) ** 2, 0);
  return { parameters, deviance, objective: deviance + away, innovations, variances };
}

/** Of half the objective: its gradient, and the expected information with that of the priors. */
function slopes({ count, priors, innovate }: InnovationProblem, at: ScoringFit) {
  const { parameters, innovations, variances } = at;
  const shifted = parameters.slice();
  // Each parameter's slope of the innovations over their deviations, then of the variances over √2 times themselves.
  const columns = priors.map(({ sd }, k) => {
    const column = new Float64Array(2 * count);
    const moved = column.subarray(0, count);
    const spread = column.subarray(count);
    const reach = REACH * sd;
    shifted[k] = parameters[k] + reach;
    innovate(shifted, moved, spread);
    shifted[k] = parameters[k];
    for (let t = 0; t < count; t++) {
      moved[t] = (moved[t] - innovations[t]) / (reach * Math.sqrt(variances[t]));
      spread[t] = (spread[t] - variances[t]) / (reach * Math.SQRT2 * variances[t]);
    }
    return column;
  });
  const target = new Float64Array(2 * count);
  for (let t = 0; t < count; t++) {
    target[t] = innovations[t] / Math.sqrt(variances[t]);
    target[count + t] = (1 - innovations[t] ** 2 / variances[t]) / Math.SQRT2;
  }
  const gradient = columns.map(
    (column, k) => dot(column, target) + (parameters[k] - priors[k].mean) / priors[k].sd ** 2,
  );
  const lower = columns.map((column, i) => columns.slice(0, i + 1).map((other) => dot(column, other)));
  const information: Matrix = matrixOf(
    priors.length,
    (i, j) => (j > i ? lower[j][i] : lower[i][j]) + (i === j ? 1 / priors[i].sd ** 2 : 0),
  );
  return { gradient, information };
}
