/** The network fitted: how much more than drawn the insulation and the leakage must pass. */
import type { Matrix } from '../../maths/matrix.ts';
import {
  informationAt,
  maximumPosterior,
  mostRounds,
  type Posterior,
  type PosteriorProblem,
  searchMaximum,
} from '../../maths/maximumPosterior.ts';
import { lackingNear } from './nearWay.ts';
import { readParameters } from './parameters.ts';
import { heatLossAt, type NetworkProblem } from './problem.ts';
import type { Block, Span } from './spans.ts';
import { lackingHeat } from './way.ts';

/** Standard deviations of a block's lacking heat about its span's mean, and of that mean, over the loss [K]. */
interface Scatter {
  readonly within: number;
  readonly between: number;
  /**
   * Which heat-loss coefficient that is: 0 the drawn one, 1 the fitted one. Errors of a model are shares of what
   * flows in it: measured against a fixed scale they would draw loss and mass down together, against the fitted
   * loss up. Where no heat is metered nothing else holds the scale, and the middle of both draws neither way.
   */
  readonly ownScale: number;
}

/**
 * The least scatter believed; what is met beyond it counts. Set on the tuning seeds of the proving ground: what a
 * network of one room leaves unexplained in simulated houses of several rooms at their true parameters is 0.2 to 1 K
 * within a night and 0.4 to 1.6 K from night to night.
 */
const LEAST: Readonly<Record<Span['kind'], Scatter>> = {
  free: { within: 0.4, between: 0.6, ownScale: 0.5 },
  heated: { within: 0.8, between: 0.4, ownScale: 0.25 },
  metered: { within: 1, between: 0.3, ownScale: 0.2 },
};
/** A drift that all free nights share lasts about this long [s]. */
const SETTLING = 6 * 3600;

type Scatters = typeof LEAST;

/**
 * Null where the readings have no answer.
 *
 * @param onRound told before each round of the search, of how many at most; it may throw, to end it
 */
export function fitNetwork(
  problem: NetworkProblem,
  onRound: (done: number, of: number) => void,
): Posterior | null {
  let rounds = 0;
  // Two searches, and a last round that tells how sure the second one is.
  const count = () => onRound(rounds++, 2 * mostRounds + 1);
  const first = searchMaximum({ ...residualsOf(problem, LEAST), onRound: count });
  if (first === null) return null;
  const { parameters } = first;
  const met = scatterOf(problem.spans, restsAt(problem)(lackingHeat(problem, parameters), parameters));
  return maximumPosterior({ ...residualsOf(problem, met), start: parameters, onRound: count });
}

/** What the spans of a problem would tell of its parameters, with the scatter that is believed beforehand: JᵀJ. */
export const informationOf = (problem: NetworkProblem, at: Float64Array): Matrix =>
  informationAt(residualsOf(problem, LEAST), at);

/** From the lacking heat at parameters the rests of every span. */
function restsAt(problem: NetworkProblem) {
  const { spans, priors, stages } = problem;
  const drawn = heatLossAt(
    problem,
    priors.map(({ mean }) => mean),
    0,
  );
  return (lacking: Float64Array, x: ArrayLike<number>) => {
    const own = stages.map((_, s) => heatLossAt(problem, x, s));
    const settling = readParameters(x, 0, stages.length).shared('settling');
    return spans.map((span) => restsOf(span, lacking, drawn, own[span.stage], settling));
  };
}

function residualsOf(problem: NetworkProblem, scatter: Scatters): PosteriorProblem {
  const { spans, priors } = problem;
  const rests = restsAt(problem);
  return {
    count: spans.reduce((sum, { blocks }) => sum + blocks.length, 0),
    priors,
    residuals: (x, out) => whiten(spans, rests(lackingHeat(problem, x), x), scatter, out),
    around(at) {
      const near = lackingNear(problem, at);
      return (k, moved, out) => whiten(spans, rests(near(k, moved), moved), scatter, out);
    },
  };
}

/** A span's lacking heat block by block, over the loss, without the drift that all free nights share [K]. */
function restsOf(
  { kind, blocks }: Span,
  lacking: Float64Array,
  drawn: number,
  own: number,
  settling: number,
): number[] {
  const { ownScale } = LEAST[kind];
  const scale = drawn ** (1 - ownScale) * own ** ownScale;
  return blocks.map((block) => {
    const drift = kind === 'free' ? settling * Math.exp(-block.sinceStart / SETTLING) : 0;
    return meanOf(lacking, block) / scale - drift;
  });
}

/** Each span's blocks less so much of their mean that what is left has unit variance and no correlation. */
function whiten(
  spans: readonly Span[],
  rests: readonly (readonly number[])[],
  scatter: Scatters,
  out: Float64Array,
): void {
  let i = 0;
  spans.forEach(({ kind }, s) => {
    const { within, between } = scatter[kind];
    const values = rests[s];
    const mean = values.reduce((sum, it) => sum + it, 0) / values.length;
    const kept = within / Math.sqrt(within ** 2 + values.length * between ** 2);
    for (const value of values) out[i++] = (value - (1 - kept) * mean) / within;
  });
}

function meanOf(values: Float64Array, { from, to }: Block): number {
  let sum = 0;
  for (let k = from; k < to; k++) sum += values[k];
  return sum / (to - from);
}

/** What the spans really scatter by, at least what was believed. */
function scatterOf(spans: readonly Span[], rests: readonly (readonly number[])[]): Scatters {
  const of = (kind: Span['kind']): Scatter => {
    const least = LEAST[kind];
    const own = rests.filter((_, s) => spans[s].kind === kind);
    if (own.length === 0) return least;
    let squares = 0;
    let freedom = 0;
    let levels = 0;
    for (const values of own) {
      const mean = values.reduce((sum, it) => sum + it, 0) / values.length;
      squares += values.reduce((sum, it) => sum + (it - mean) ** 2, 0);
      freedom += values.length - 1;
      levels += mean ** 2;
    }
    return {
      ...least,
      within: Math.max(least.within, Math.sqrt(squares / Math.max(1, freedom))),
      between: Math.max(least.between, Math.sqrt(levels / own.length)),
    };
  };
  return { free: of('free'), heated: of('heated'), metered: of('metered') };
}
