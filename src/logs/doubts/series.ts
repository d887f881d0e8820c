/** One channel as the finders of doubtful readings see it. */
import type { Quantity } from '../../assessment.ts';

export interface Series {
  readonly quantity: Quantity;
  /** Instants, strictly rising [s]. */
  readonly time: Float64Array;
  /** In the units of LogChannel, no NaN; same length as `time`. */
  readonly value: Float64Array;
}

/** The places in `channel` of the readings that are doubted, beside the other channels of its file. */
export type Finder = (channel: Series, others: readonly Series[]) => readonly number[];

/** The readings not doubted so far, and the place of each in the whole channel. */
export function withoutDoubts(
  { quantity, time, value }: Series,
  doubt: Uint8Array,
): Series & { readonly place: Uint32Array } {
  const place = new Uint32Array(value.length);
  let count = 0;
  for (let i = 0; i < value.length; i++) if (doubt[i] === 0) place[count++] = i;
  const kept = place.subarray(0, count);
  if (count === value.length) return { quantity, time, value, place: kept };
  return {
    quantity,
    time: Float64Array.from(kept, (i) => time[i]),
    value: Float64Array.from(kept, (i) => value[i]),
    place: kept,
  };
}

/** The last reading at or before an instant; -1 where there is none. */
export function lastUpTo(time: Float64Array, instant: number): number {
  let low = -1;
  let high = time.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle] <= instant) low = middle;
    else high = middle;
  }
  return low;
}
