/** Figures with their 95 % intervals, scaled and added. */
import type { Estimate } from '../assessment.ts';

/** @param by above 0 */
export const scaled = ({ value, low, high }: Estimate, by: number): Estimate => ({
  value: value * by,
  low: low * by,
  high: high * by,
});

/** Of independent figures: each side from the same sides of theirs. */
export const sumOf = (a: Estimate, b: Estimate): Estimate => ({
  value: a.value + b.value,
  low: a.value + b.value - Math.hypot(below(a), below(b)),
  high: a.value + b.value + Math.hypot(above(a), above(b)),
});

export const below = ({ value, low }: Estimate): number => value - low;
export const above = ({ value, high }: Estimate): number => high - value;
