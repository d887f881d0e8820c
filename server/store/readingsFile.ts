/** The readings of one channel as a file, on their way from the thread that reads logs to the one that stores. */
import { readFileSync, writeFileSync } from 'node:fs';
import type { Readings } from './dayBlob.ts';

/** Instants, then values, as 64-bit floats; for this machine only. */
export function writeReadings(path: string, { time, value }: Readings): void {
  const both = new Float64Array(time.length + value.length);
  both.set(time);
  both.set(value, time.length);
  writeFileSync(path, both);
}

export function readReadings(path: string): Readings {
  const bytes = readFileSync(path);
  const both = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 8);
  const n = both.length / 2;
  return { time: both.subarray(0, n), value: both.subarray(n) };
}
