/**
 * The readings of one channel and UTC day as bytes: n values as 64-bit floats, then n instants as 32-bit
 * integers, in milliseconds since the day's midnight; little-endian. A logger's digits do not survive 32-bit
 * floats (20.13 comes back as 20.1299992), so values are kept whole. Instants are kept to the millisecond.
 */
const BYTES_PER_READING = 12;

/** [s] */
export const DAY = 86_400;

export interface Readings {
  /** Instants, rising [s]. */
  readonly time: Float64Array;
  /** In SI, none of them NaN; as long as `time`. */
  readonly value: Float64Array;
}

/** @param day days since 1970 UTC; every instant lies in it */
export function packDay({ time, value }: Readings, day: number): Uint8Array {
  const bytes = new Uint8Array(time.length * BYTES_PER_READING);
  new Float64Array(bytes.buffer, 0, time.length).set(value);
  bytes.set(packInstants(time, day), time.length * 8);
  return bytes;
}

/** Days in their order as one series. */
export function unpackDays(
  rows: readonly { readonly day: number; readonly readings: Uint8Array }[],
): Readings {
  const length = rows.reduce((sum, { readings }) => sum + readings.length, 0) / BYTES_PER_READING;
  const [time, value] = [new Float64Array(length), new Float64Array(length)];
  const valueBytes = new Uint8Array(value.buffer);
  let at = 0;
  for (const { day, readings } of rows) {
    const n = readings.length / BYTES_PER_READING;
    valueBytes.set(readings.subarray(0, n * 8), at * 8);
    instantsInto(time.subarray(at, at + n), readings.subarray(n * 8), day);
    at += n;
  }
  return { time, value };
}

export const unpackDay = (readings: Uint8Array, day: number): Readings => unpackDays([{ day, readings }]);

/** Instants of one UTC day alone, in the same form. */
export function packInstants(time: Float64Array, day: number): Uint8Array {
  const offsets = new Int32Array(time.length);
  const midnight = day * DAY;
  for (let i = 0; i < time.length; i++) offsets[i] = Math.round((time[i] - midnight) * 1000);
  return new Uint8Array(offsets.buffer);
}

export function unpackInstants(bytes: Uint8Array, day: number): Float64Array {
  const time = new Float64Array(bytes.length / Int32Array.BYTES_PER_ELEMENT);
  instantsInto(time, bytes, day);
  return time;
}

function instantsInto(time: Float64Array, bytes: Uint8Array, day: number): void {
  const offsets = new Int32Array(...aligned(bytes, Int32Array), time.length);
  const midnight = day * DAY * 1000;
  for (let i = 0; i < time.length; i++) time[i] = (midnight + offsets[i]) / 1000;
}

/** The buffer and the offset where the bytes lie as these numbers may: copied only where they do not. */
export function aligned(
  bytes: Uint8Array,
  numbers: { readonly BYTES_PER_ELEMENT: number },
): [buffer: ArrayBufferLike, offset: number] {
  const { buffer, byteOffset } =
    bytes.byteOffset % numbers.BYTES_PER_ELEMENT === 0 ? bytes : new Uint8Array(bytes);
  return [buffer, byteOffset];
}
