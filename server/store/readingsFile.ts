/** The readings of one channel as a file, on their way from the thread that reads logs to the one that stores. */
import { readFileSync, writeFileSync } from 'node:fs';
import type { Readings } from './dayBlob.ts';

export interface DoubtedReadings extends Readings {
  /** 0 for a reading that nothing speaks against; as long as `time`. */
  readonly doubt: Uint8Array;
}

const BYTES_PER_READING = 17;

/** Instants and values as 64-bit floats, then a byte for the doubt; for this machine only. */
export function writeReadings(path: string, { time, value, doubt }: DoubtedReadings): void {
  const n = time.length;
  const bytes = new Uint8Array(n * BYTES_PER_READING);
  new Float64Array(bytes.buffer, 0, n).set(time);
  new Float64Array(bytes.buffer, n * 8, n).set(value);
  bytes.set(doubt, n * 16);
  writeFileSync(path, bytes);
}

export function readReadings(path: string): DoubtedReadings {
  const bytes = readFileSync(path);
  const n = bytes.length / BYTES_PER_READING;
  const both = new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + n * 16));
  return { time: both.subarray(0, n), value: both.subarray(n), doubt: bytes.subarray(n * 16) };
}
