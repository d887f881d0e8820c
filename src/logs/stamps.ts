/** The times of many rows as they are written, before day and month are told apart: growing arrays, no object per row. */
import type { Shape, Stamp } from './stamp.ts';

/** Shapes as numbers: 0 for a row without a time, else 1 + the place in this list. */
export const shapes: readonly Shape[] = ['year first', 'day first', 'year last', 'open'];
export const shapeCode = (shape: Shape): number => 1 + shapes.indexOf(shape);

export interface Stamps {
  readonly count: number;
  /** Per row a code of its date's shape. */
  readonly shape: Uint8Array;
  /** Per row the three numbers of its date in the order of the text. */
  readonly parts: Int16Array;
  /** Seconds since the day began. */
  readonly clock: Float64Array;
  /** Offset from UTC that the row states [s]; NaN where it states none. */
  readonly offset: Float64Array;
}

/** Stamps of rows that are at hand, null for a row without a time. */
export function stampsOf(found: readonly (Stamp | null)[]): Stamps {
  const stamps = {
    count: found.length,
    shape: new Uint8Array(found.length),
    parts: new Int16Array(3 * found.length),
    clock: new Float64Array(found.length),
    offset: new Float64Array(found.length).fill(Number.NaN),
  };
  found.forEach((stamp, i) => {
    if (stamp === null) return;
    stamps.shape[i] = shapeCode(stamp.shape);
    stamps.parts.set(stamp.parts, 3 * i);
    stamps.clock[i] = stamp.clock;
    stamps.offset[i] = stamp.offset;
  });
  return stamps;
}
