/** How much surer a figure of the network looks than it is. */
import type { Tier } from '../../assessment.ts';

/**
 * Standard deviations of logarithms beyond what the posterior knows, so that intervals hold on the tuning seeds of
 * the proving ground (`npm run prove -- --seeds tuning`): the network is one room, has one film and one leak.
 */
const BEYOND = {
  none: 0,
  loggers: 0.03,
  'heated-night': 0.045,
  metered: 0.05,
  /** Nobody logged the sun. */
  meteredInTheDark: 0.09,
  /** Layers made up: in the network's own balance, and in the capacity that its nights work with. */
  madeUp: 0.22,
  madeUpCapacity: 0.15,
  /** Of effective capacity: everything that its network takes as believed. */
  effective: 0.11,
  /** Of a ratio, and for each unit of its logarithm. */
  ratio: 0.045,
  ratioPerLog: 0.1,
} as const;
/** Ways to a ratio share nights and loggers: their mean is surer than one, less than three would be. */
const RATIO_OF_POSTERIOR = 0.6;

export interface Known {
  readonly tier: Tier;
  readonly sunLogged: boolean;
  /** Layers were made up, because only U-values were given. */
  readonly madeUp: boolean;
}

/** Of the network's own figure, one standard deviation of the logarithm, from its posterior variance. */
export function networkSd(variance: number, { tier, sunLogged, madeUp }: Known): number {
  const beyond = tier === 'metered' && !sunLogged ? BEYOND.meteredInTheDark : BEYOND[tier];
  const layers = !madeUp || tier === 'metered' ? 0 : BEYOND.madeUp / (tier === 'loggers' ? 1 : 2);
  return Math.hypot(Math.sqrt(variance), beyond, layers);
}

/** What the figure by effective capacity rests on: standard deviations over the loss [–]. */
export interface EffectiveRestsOn {
  readonly capacity: number;
  readonly loggers: number;
  readonly gains: number;
  /** Of its nights' time constants, in the mean over them. */
  readonly nights: number;
}

/** Of the figure by effective capacity. */
export const effectiveSd = ({ nights, ...rest }: EffectiveRestsOn, madeUp: boolean): number =>
  Math.hypot(nights, besidesNights(rest, madeUp));

/** Whether so few nights, or so different ones, leave more doubt than all else: then it is no equal of the network. */
export const nightsTellLittle = ({ nights, ...rest }: EffectiveRestsOn, madeUp: boolean): boolean =>
  nights > besidesNights(rest, madeUp);

const besidesNights = (of: Omit<EffectiveRestsOn, 'nights'>, madeUp: boolean): number =>
  Math.hypot(of.capacity, BEYOND.effective, madeUp ? BEYOND.madeUpCapacity : 0, of.loggers, of.gains);

/** Of the mean of both, which share nights, loggers and drawings. */
export const combinedSd = (ownSd: number, otherSd: number, logApart: number): number =>
  Math.hypot(Math.min(ownSd, otherSd), logApart / 4);

/** Of the mean of several ways to a ratio, as logarithms. */
export function ratioSd(variance: number, ways: readonly number[], mean: number): number {
  const share = ways.length > 1 ? RATIO_OF_POSTERIOR : 1;
  const spread = (Math.max(...ways) - Math.min(...ways)) / 4;
  return Math.hypot(share * Math.sqrt(variance), BEYOND.ratio, BEYOND.ratioPerLog * mean, spread);
}
