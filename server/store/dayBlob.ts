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

export function unpackDay(bytes: Uint8Array, day: number): Readings {
  const n = bytes.length / BYTES_PER_READING;
  return {
    time: unpackInstants(bytes.subarray(n * 8), day),
    value: new Float64Array(Uint8Array.from(bytes.subarray(0, n * 8)).buffer),
  };
}

/** Instants of one UTC day alone, in the same form. */
export function packInstants(time: Float64Array, day: number): Uint8Array {
  const offsets = Int32Array.from(time, (instant) => Math.round((instant - day * DAY) * 1000));
  return new Uint8Array(offsets.buffer);
}

export function unpackInstants(bytes: Uint8Array, day: number): Float64Array {
  const offsets = new Int32Array(Uint8Array.from(bytes).buffer);
  return Float64Array.from(offsets, (offset) => (day * DAY * 1000 + offset) / 1000);
}
