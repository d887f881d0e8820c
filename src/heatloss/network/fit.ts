/** The network fitted: how much more than drawn the insulation and the leakage must pass. */
import { maximumPosterior, type Posterior } from '../../maths/maximumPosterior.ts';
import { readParameters } from './parameters.ts';
import { heatLossAt, lackingHeat, type NetworkProblem } from './problem.ts';
import type { Block, Span } from './spans.ts';

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

/** Null where the readings have no answer. */
export function fitNetwork(problem: NetworkProblem): Posterior | null {
  const { spans, priors, stages } = problem;
  const count = spans.reduce((sum, { blocks }) => sum + blocks.length, 0);
  const drawn = heatLossAt(
    problem,
    priors.map(({ mean }) => mean),
    0,
  );
  const rests = (x: ArrayLike<number>) => {
    const lacking = lackingHeat(problem, x);
    const own = stages.map((_, s) => heatLossAt(problem, x, s));
    const settling = readParameters(x, 0, stages.length).shared('settling');
    return spans.map((span) => restsOf(span, lacking, drawn, own[span.stage], settling));
  };
  const search = (scatter: Scatters, start?: Float64Array) =>
    maximumPosterior({
      count,
      priors,
      ...(start !== undefined && { start }),
      residuals: (x, out) => whiten(spans, rests(x), scatter, out),
    });
  const first = search(LEAST);
  return first && search(scatterOf(spans, rests(first.parameters)), first.parameters);
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
