/**
 * The 24 hours of one channel and UTC day as bytes: for each n, min, max, sum as 64-bit floats, little-endian.
 * An hour without a reading has n = 0 and NaN as its min and max.
 */
import { DAY, type Readings } from './dayBlob.ts';

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
  const found: HourSummary[] = [];
  eachHourOf(bytes, day, (start, min, max, n, sum) => found.push({ start, n, min, max, sum }));
  return found;
}

/** The same without an object for each: a long view has a hundred thousand of them. */
export function eachHourOf(
  bytes: Uint8Array,
  day: number,
  call: (start: number, min: number, max: number, n: number, sum: number) => void,
): void {
  const isAligned = bytes.byteOffset % Float64Array.BYTES_PER_ELEMENT === 0;
  const { buffer, byteOffset } = isAligned ? bytes : Uint8Array.from(bytes);
  const hours = new Float64Array(buffer, byteOffset, 24 * FIELDS);
  for (let at = 0; at < hours.length; at += FIELDS)
    if (hours[at] > 0)
      call(day * DAY + (at / FIELDS) * HOUR, hours[at + 1], hours[at + 2], hours[at], hours[at + 3]);
}
