/**
 * The 24 hours of one channel and UTC day as bytes: for each n, min, max, sum as 64-bit floats, little-endian.
 * An hour without a reading has n = 0 and NaN as its min and max.
 */
import { aligned, DAY, type Readings } from './dayBlob.ts';

/** [s] */
export const HOUR = 3600;
const FIELDS = 4;

/** One hour that has readings; values in SI. */
export interface HourSummary {
  /** Where the hour begins [s]. */
  readonly start: number;
  readonly n: number;
  readonly min: number;
  readonly max: number;
  readonly sum: number;
}

export function packHours({ time, value }: Readings, day: number): Uint8Array {
  const hours = new Float64Array(24 * FIELDS);
  for (let hour = 0; hour < 24; hour++) hours.set([0, Number.NaN, Number.NaN, 0], hour * FIELDS);
  for (let i = 0; i < time.length; i++) {
    const at = Math.floor((time[i] - day * DAY) / HOUR) * FIELDS;
    hours[at] += 1;
    if (!(hours[at + 1] <= value[i])) hours[at + 1] = value[i];
    if (!(hours[at + 2] >= value[i])) hours[at + 2] = value[i];
    hours[at + 3] += value[i];
  }
  return new Uint8Array(hours.buffer);
}

export function unpackHours(bytes: Uint8Array, day: number): HourSummary[] {
  const hours = fieldsOf(bytes);
  const found: HourSummary[] = [];
  for (let at = 0; at < hours.length; at += FIELDS)
    if (hours[at] > 0) {
      const [n, min, max, sum] = hours.subarray(at, at + FIELDS);
      found.push({ start: day * DAY + (at / FIELDS) * HOUR, n, min, max, sum });
    }
  return found;
}

/** The least and the greatest of stretches of time that have readings; a long view has a hundred thousand of them. */
export interface Extremes {
  /** Where each begins, rising [s]. */
  readonly start: Float64Array;
  readonly min: Float64Array;
  readonly max: Float64Array;
}

/** Of the hours of some days, in their order. */
export function hourExtremes(
  rows: readonly { readonly day: number; readonly hours: Uint8Array }[],
): Extremes {
  const array = () => new Float64Array(24 * rows.length);
  const [start, min, max] = [array(), array(), array()];
  let n = 0;
  for (const row of rows) {
    const hours = fieldsOf(row.hours);
    for (let at = 0; at < hours.length; at += FIELDS) {
      if (!(hours[at] > 0)) continue;
      start[n] = row.day * DAY + (at / FIELDS) * HOUR;
      min[n] = hours[at + 1];
      max[n++] = hours[at + 2];
    }
  }
  return { start: start.subarray(0, n), min: min.subarray(0, n), max: max.subarray(0, n) };
}

const fieldsOf = (bytes: Uint8Array) => new Float64Array(...aligned(bytes, Float64Array), 24 * FIELDS);
