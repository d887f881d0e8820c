/** How leakage goes up and down with the weather, apart from how much of it there is. */
import type { Parameters } from './parameters.ts';
import type { Span } from './spans.ts';
import type { Surroundings } from './surroundings.ts';

/** What drives leakage; no parameter changes any of it. */
export interface Leakage {
  /** The root of the difference of temperatures, which the warm air's own lift goes with, and its mean [√K]. */
  readonly lift: Float64Array;
  readonly meanLift: number;
  /** Wind speed over its mean; null where it was not logged: then always 1 [–]. */
  readonly wind: Float64Array | null;
}

export function leakageOf({ inside, outside, wind }: Surroundings): Leakage {
  const lift = inside.map((it, k) => Math.sqrt(Math.abs(it - outside[k])));
  return { lift, meanLift: lift.reduce((sum, it) => sum + it, 0) / lift.length || 1, wind };
}

/** The share of the leakage that the wind drives [–]; the rest is the warm air's own lift. */
export const windShareOf = (shared: Parameters['shared']): number => 1 / (1 + Math.exp(-shared('wind')));

/** Leakage at an instant of the grid over its mean, as wind and the difference of temperatures drive it [–]. */
export const leakageAt = ({ lift, meanLift, wind }: Leakage, k: number, windShare: number): number =>
  ((1 - windShare) * lift[k]) / meanLift + windShare * (wind === null ? 1 : wind[k]);

/** Over the mean of the whole record, its mean over some spans [–]; 1 without any. */
export function meanLeakage(leakage: Leakage, spans: readonly Span[], windShare: number): number {
  let sum = 0;
  let count = 0;
  for (const { blocks } of spans)
    for (const { from, to } of blocks)
      for (let k = from; k < to; k++) {
        sum += leakageAt(leakage, k, windShare);
        count++;
      }
  return count === 0 ? 1 : sum / count;
}
