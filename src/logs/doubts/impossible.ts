/** Readings of what cannot be, however long they last: an open probe, an overflow, a sensor that answers with a code. */
import { possibleRange } from '../plausible.ts';
import type { Series } from './series.ts';

/** Of the conversion of units. */
const ROUNDING = 1e-9;

export function impossibleReadings({ quantity, value }: Series): number[] {
  const range = possibleRange(quantity);
  if (range === null) return [];
  const [low, high] = [range[0] - ROUNDING, range[1] + ROUNDING];
  const found: number[] = [];
  for (let i = 0; i < value.length; i++) if (value[i] < low || value[i] > high) found.push(i);
  return found;
}
