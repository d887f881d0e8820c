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
  const offsets = new Int32Array(bytes.buffer, time.length * 8, time.length);
  for (let i = 0; i < time.length; i++) offsets[i] = Math.round((time[i] - day * DAY) * 1000);
  return bytes;
}

export function unpackDay(bytes: Uint8Array, day: number): Readings {
  const n = bytes.length / BYTES_PER_READING;
  const own = bytes.slice().buffer;
  const offsets = new Int32Array(own, n * 8, n);
  return {
    time: Float64Array.from(offsets, (offset) => (day * DAY * 1000 + offset) / 1000),
    value: new Float64Array(own, 0, n),
  };
}
