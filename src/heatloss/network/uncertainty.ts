/** How sure a figure of the fitted network is, and where the doubt comes from. */
import { type DoubtSource, doubtSources } from '../../assessment.ts';
import type { Posterior } from '../../maths/maximumPosterior.ts';
import { type Prior, type SharedKey, sharedKeys } from './parameters.ts';

/** The shares of a budget add up to 1. */
export type DoubtShares = Readonly<Record<DoubtSource, number>>;

const sourceOf: Readonly<Record<SharedKey, DoubtSource>> = {
  mass: 'capacity',
  furniture: 'capacity',
  loggers: 'loggers',
  wind: 'wind',
  sun: 'sun',
  sky: 'sun',
  gains: 'gains',
  neighbour: 'gains',
  ground: 'gains',
  convection: 'model',
  start: 'model',
  radiantShare: 'model',
  settling: 'model',
};

/** A figure of the parameters, on the logarithm, with its variance taken apart. */
export interface LogFigure {
  readonly log: number;
  readonly variance: number;
  /** Parts of the variance, by where they come from. */
  readonly parts: Readonly<Record<DoubtSource, number>>;
}

/** Step of the differences: logarithms, tenths of watts and kelvins alike. */
const REACH = 0.01;

/**
 * A figure's logarithm by the normal approximation. What the readings scatter by and what is believed of each
 * parameter both move the answer, each by itself: Σ = A⁻¹(JᵀJ)A⁻¹ + Σₖ A⁻¹PₖA⁻¹ with A = JᵀJ + P, so the parts add up.
 *
 * @param figure of the parameters, above zero
 */
export function logFigure(
  { parameters, covariance, information }: Posterior,
  priors: readonly Prior[],
  figure: (x: ArrayLike<number>) => number,
): LogFigure {
  const log = Math.log(figure(parameters));
  const gradient = Array.from(parameters, (value, k) => {
    const moved = parameters.slice();
    moved[k] = value + REACH;
    return (Math.log(figure(moved)) - log) / REACH;
  });
  // A⁻¹ times the gradient: how far the figure follows each parameter's own doubt.
  const followed = covariance.map((row) => row.reduce((sum, it, k) => sum + it * gradient[k], 0));
  const parts: Record<DoubtSource, number> = {
    capacity: 0,
    loggers: 0,
    nights: information.reduce(
      (sum, row, i) => sum + followed[i] * row.reduce((own, it, k) => own + it * followed[k], 0),
      0,
    ),
    wind: 0,
    sun: 0,
    gains: 0,
    model: 0,
  };
  const stageParameters = parameters.length - sharedKeys.length;
  priors.forEach(({ sd }, k) => {
    const source = k < stageParameters ? 'model' : sourceOf[sharedKeys[k - stageParameters]];
    parts[source] += (followed[k] / sd) ** 2;
  });
  return { log, variance: doubtSources.reduce((sum, source) => sum + parts[source], 0), parts };
}

/** As shares of a whole variance, what is missing from it being the model's. */
export function sharesOf({ parts, variance }: LogFigure, whole: number): DoubtShares {
  const of = (source: DoubtSource) =>
    (parts[source] + (source === 'model' ? Math.max(0, whole - variance) : 0)) / Math.max(whole, variance);
  return {
    capacity: of('capacity'),
    loggers: of('loggers'),
    nights: of('nights'),
    wind: of('wind'),
    sun: of('sun'),
    gains: of('gains'),
    model: of('model'),
  };
}
