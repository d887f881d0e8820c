/** Chance in the words of the trade. */
import { type Random, random } from '../random.ts';

export interface Draws {
  /** Evenly between two figures. */
  between(low: number, high: number): number;
  /** Evenly on the logarithm. */
  factor(low: number, high: number): number;
  /** Log-normal about 1, kept within three deviations. */
  scatter(logSd: number): number;
  oneOf<T>(choices: readonly T[]): T;
  /** True this often. */
  chance(share: number): boolean;
  readonly source: Random;
}

/** @param name a stream of its own, so that a further draw in one place moves nothing elsewhere */
export function drawsOf(seed: number, name: string): Draws {
  const source = random(seed, name);
  const between = (low: number, high: number) => low + (high - low) * source.uniform();
  return {
    between,
    factor: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    scatter: (logSd) => Math.exp(logSd * Math.min(3, Math.max(-3, source.normal()))),
    oneOf: (choices) => choices[Math.floor(source.uniform() * choices.length)],
    chance: (share) => source.uniform() < share,
    source,
  };
}
