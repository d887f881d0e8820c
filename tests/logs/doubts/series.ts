/** Builds channels from plain values and says plainly which readings are doubted. */
import type { Quantity } from '../../../src/assessment.ts';
import { doubtsOf, type Series } from '../../../src/logs/doubts/index.ts';
import { type DoubtKind, doubtKinds } from '../../../src/logs/log.ts';

export const start = 1_767_225_600;

/** Readings every `interval` minutes. */
export const every = (interval: number, quantity: Quantity, value: ArrayLike<number>): Series => ({
  quantity,
  time: Float64Array.from(value, (_, i) => start + 60 * interval * i),
  value: Float64Array.from(value),
});

export type Doubted = Partial<Record<DoubtKind, number[]>>;

/** Places of the doubted readings of the first channel, by kind. */
export const doubted = (...channels: Series[]): Doubted => placesOf(doubtsOf(channels)[0]);

export function placesOf(codes: Uint8Array): Doubted {
  const places: Doubted = {};
  codes.forEach((code, i) => {
    if (code === 0) return;
    const kind = doubtKinds[code - 1];
    places[kind] = [...(places[kind] ?? []), i];
  });
  return places;
}

export const range = (first: number, end: number) => Array.from({ length: end - first }, (_, k) => first + k);

/** The series with some readings changed. */
export const withValues = (series: Series, changed: Readonly<Record<number, number>>): Series => ({
  ...series,
  value: series.value.map((it, i) => changed[i] ?? it),
});

export const onlyReadings = (series: Series, isKept: (i: number) => boolean): Series => ({
  ...series,
  time: series.time.filter((_, i) => isKept(i)),
  value: series.value.filter((_, i) => isKept(i)),
});
