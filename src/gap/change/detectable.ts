/** The least change that two stages could have shown, and how many nights would show a given one. */
import type { Estimate } from '../../assessment.ts';
import type { PooledTimeConstant } from '../../cooling/index.ts';
import { ratioSd } from '../../heatloss/network/beyond.ts';
import { logSdOf, NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import { compareStages } from '../compare.ts';
import { mostNights } from './mostNights.ts';

/** Standard deviation of a ratio's logarithm [–], if the ratio's logarithm were this. */
export type DoubtAt = (logRatio: number) => number;

export interface NightsToShow {
  /** Of the heat loss, downwards [–]. */
  readonly change: number;
  /** On each side; null where `mostNights` would not show it. */
  readonly nights: number | null;
}

/** One estimate in five falls so many standard deviations below the truth. */
const ONE_IN_FIVE = 0.84;
const PLANNED_FOR = [0.05, 0.1, 0.2] as const;
/** The doubt grows with the change by less than a third of it, so each round halves what is missing at least. */
const ROUNDS = 30;

/**
 * The least fall of the heat loss [–] that is shown in four cases of five: the least that 95 % tells from nothing, and
 * what one estimate in five falls short by. The usual planning of two samples, 2.8 standard errors, with each doubt
 * taken where it counts because it grows with the change.
 */
export function smallestChange(doubt: DoubtAt): number {
  const told = settled((log) => NORMAL_95 * doubt(log));
  return 1 - Math.exp(-settled((log) => told + ONE_IN_FIVE * doubt(log)));
}

function settled(next: (log: number) => number): number {
  let log = 0;
  for (let i = 0; i < ROUNDS; i++) log = next(log);
  return log;
}

/** @param doubtWith the doubt with so many nights on each side */
export function nightsToShow(doubtWith: (nights: number) => DoubtAt): NightsToShow[] {
  const least = Array.from({ length: mostNights - 1 }, (_, i) => ({
    nights: i + 2,
    change: smallestChange(doubtWith(i + 2)),
  }));
  return PLANNED_FOR.map((change) => ({
    change,
    nights: least.find((it) => it.change <= change)?.nights ?? null,
  }));
}

/** The doubt of the plain ratio of these two stages. */
export function plainDoubt(before: PooledTimeConstant, after: PooledTimeConstant): DoubtAt {
  return (logRatio) =>
    logSdOf(compareStages(cooling(before, 1), cooling(after, Math.exp(logRatio))).heatLossRatio);
}

/** The same with other numbers of nights, that scatter as these do. */
export function plainDoubtWith(before: PooledTimeConstant, after: PooledTimeConstant) {
  const ofOneNight = Math.sqrt((scatterOf(before) + scatterOf(after)) / 2);
  return (nights: number): DoubtAt => {
    const planned = {
      ...before,
      nights,
      logSe: ofOneNight / Math.sqrt(nights),
      degreesOfFreedom: nights - 1,
    };
    return plainDoubt(planned, planned);
  };
}

/** The doubt of a ratio by one network for both stages, from the interval that it came with. */
export function jointDoubt(ratio: Estimate): DoubtAt {
  const beyondFloor = ownVariance(ratio);
  return (logRatio) => jointSd(beyondFloor, logRatio);
}

/**
 * The same with other numbers of nights: what the scatter of the nights explains of it shrinks with more of them
 * (and is less well known of few, hence Student's t), the rest stays.
 */
export function jointDoubtWith(ratio: Estimate, before: PooledTimeConstant, after: PooledTimeConstant) {
  const own = ownVariance(ratio);
  const shrinking = Math.min(own, before.logSe ** 2 + after.logSe ** 2);
  const now = 1 / before.nights + 1 / after.nights;
  return (nights: number): DoubtAt => {
    const few = studentTQuantile(0.975, 2 * (nights - 1)) / NORMAL_95;
    const variance = own - shrinking + (shrinking * few ** 2 * (2 / nights)) / now;
    return (logRatio) => jointSd(variance, logRatio);
  };
}

/** Variance of the logarithm beyond the floor. */
const ownVariance = (ratio: Estimate) =>
  Math.max(0, logSdOf(ratio) ** 2 - jointSd(0, Math.log(ratio.value)) ** 2);
/** What such a ratio may be off by however many nights there are is the network's own floor. */
const jointSd = (variance: number, logRatio: number) => ratioSd(variance, [logRatio], logRatio);

/** Variance of one night's logarithm. */
const scatterOf = ({ logSe, nights }: PooledTimeConstant) => logSe ** 2 * nights;

const cooling = (pooled: PooledTimeConstant, value: number): PooledTimeConstant => ({
  ...pooled,
  timeConstant: { value, low: value, high: value },
});
