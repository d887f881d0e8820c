/** Pooling several estimates of one quantity, each with its own variance. */
import { type Interval, tInterval } from './studentT.ts';

export interface FixedEffect {
  readonly mean: number;
  readonly se: number;
  /** Cochran's Q: chi-square with k − 1 degrees of freedom when the estimates differ by their errors alone. */
  readonly q: number;
  /** The share of the scatter that is more than the errors explain, 0 to 1. */
  readonly iSquared: number;
  readonly degreesOfFreedom: number;
}

export type Pooling =
  | {
      readonly kind: 'pooled';
      readonly mean: number;
      /** τ²: how much the true values vary from one estimate to the next. */
      readonly betweenVariance: number;
      /** Standard error of the mean: the larger of the two below. */
      readonly se: number;
      /** From the variances given and τ². */
      readonly remlSe: number;
      /** From the scatter met. */
      readonly hartungKnappSe: number;
      readonly degreesOfFreedom: number;
      /** 95 %, by t(k − 1) and `se`. */
      readonly interval: Interval;
      readonly fixedEffect: FixedEffect;
    }
  | { readonly kind: 'not pooled'; readonly reason: 'fewer than two estimates' };

/**
 * Random-effects mean: the estimates scatter by their own errors and by a common variance that is found by
 * restricted maximum likelihood (REML).
 *
 * Viechtbauer, J. Educ. Behav. Stat. 30 (2005) 261, doi:10.3102/10769986030003261; the second standard error by
 * Hartung and Knapp, Stat. Med. 20 (2001) 3875, doi:10.1002/sim.1009. The interval takes the larger of the
 * two, because a few estimates that happen to agree would otherwise promise too much.
 *
 * @param estimates length k, finite
 * @param variances length k, the squared standard errors, above 0
 * @throws RangeError when the lengths differ or a number is outside of these
 */
export function poolRandomEffects(estimates: ArrayLike<number>, variances: ArrayLike<number>): Pooling {
  check(estimates, variances);
  if (estimates.length < 2) return { kind: 'not pooled', reason: 'fewer than two estimates' };

  const betweenVariance = restrictedMaximumLikelihood(estimates, variances);
  const { mean, se: remlSe, q, degreesOfFreedom } = weigh(estimates, variances, betweenVariance);
  const hartungKnappSe = remlSe * Math.sqrt(q / degreesOfFreedom);
  const se = Math.max(remlSe, hartungKnappSe);
  return {
    kind: 'pooled',
    mean,
    betweenVariance,
    se,
    remlSe,
    hartungKnappSe,
    degreesOfFreedom,
    interval: tInterval(mean, se, degreesOfFreedom),
    fixedEffect: fixedEffect(estimates, variances),
  };
}

function check(estimates: ArrayLike<number>, variances: ArrayLike<number>): void {
  if (estimates.length !== variances.length) throw new RangeError('estimates and variances differ in length');
  if (!Array.from(estimates).every(Number.isFinite)) throw new RangeError('an estimate is not finite');
  if (!Array.from(variances).every((it) => it > 0 && Number.isFinite(it)))
    throw new RangeError('a variance is not above 0');
}

/** The mean when the estimates differ by their errors alone, and how well that holds. */
function fixedEffect(estimates: ArrayLike<number>, variances: ArrayLike<number>): FixedEffect {
  const { mean, se, q, degreesOfFreedom } = weigh(estimates, variances, 0);
  return {
    mean,
    se,
    q,
    iSquared: q > degreesOfFreedom ? 1 - degreesOfFreedom / q : 0,
    degreesOfFreedom,
  };
}

/** Weighted by 1/(variance + between): the mean, its error, the weights' sum and the weighted scatter q. */
function weigh(estimates: ArrayLike<number>, variances: ArrayLike<number>, between: number) {
  const weights = new Float64Array(variances.length);
  let whole = 0;
  let weighted = 0;
  for (let i = 0; i < weights.length; i++) {
    weights[i] = 1 / (variances[i] + between);
    whole += weights[i];
    weighted += weights[i] * estimates[i];
  }
  const mean = weighted / whole;
  let q = 0;
  for (let i = 0; i < weights.length; i++) q += weights[i] * (estimates[i] - mean) ** 2;
  return { weights, whole, mean, se: 1 / Math.sqrt(whole), q, degreesOfFreedom: weights.length - 1 };
}

function logLikelihoodOf({ weights, whole, q }: ReturnType<typeof weigh>): number {
  let logs = 0;
  for (const weight of weights) logs += Math.log(weight);
  return (logs - Math.log(whole) - q) / 2;
}

/** The slope of the likelihood over τ². */
function scoreOf({ weights, whole, mean }: ReturnType<typeof weigh>, estimates: ArrayLike<number>): number {
  let scatter = 0;
  let squares = 0;
  for (let i = 0; i < weights.length; i++) {
    scatter += (weights[i] * (estimates[i] - mean)) ** 2;
    squares += weights[i] * weights[i];
  }
  return (scatter + squares / whole - whole) / 2;
}

/**
 * The restricted likelihood can have more than one peak: the highest is found on a grid from nothing to more
 * than all of the scatter, then its top by halving where the slope (the score) changes sign.
 */
function restrictedMaximumLikelihood(estimates: ArrayLike<number>, variances: ArrayLike<number>): number {
  const values = Array.from(estimates);
  const least = Math.min(...Array.from(variances));
  const most = (Math.max(...values) - Math.min(...values)) ** 2;
  const steps = Math.max(1, Math.ceil(8 * Math.log2(1 + most / (least / 100))));
  const grid = Array.from({ length: steps + 2 }, (_, i) => (least / 100) * (2 ** (i / 8) - 1));

  const at = (between: number) => weigh(estimates, variances, between);
  const likelihoods = grid.map((it) => logLikelihoodOf(at(it)));
  const peak = likelihoods.indexOf(Math.max(...likelihoods));
  let low = grid[Math.max(0, peak - 1)];
  let high = grid[peak + 1] ?? grid[peak];
  if (peak === 0 && scoreOf(at(0), estimates) <= 0) return 0;
  for (let round = 0; round < 100; round++) {
    const middle = (low + high) / 2;
    const above = scoreOf(at(middle), estimates) > 0;
    // Halved as far as numbers go.
    if (middle === (above ? low : high)) break;
    if (above) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
