/** Measured against design: the ratio and the word for it. */
import type { Estimate, Verdict } from '../assessment.ts';

/** How far above the design still counts as meeting it, unless the house says otherwise. */
export const DEFAULT_ALLOWANCE = 0.15;

/** Measured over designed heat loss; the design's own uncertainty is shown apart, not mixed in. */
export const gapRatio = (measured: Estimate, designed: number): Estimate => ({
  value: measured.value / designed,
  low: measured.low / designed,
  high: measured.high / designed,
});

/**
 * `meets` when the ratio's upper end is at most 1 + allowance; else `exceeds` when its lower end is above 1;
 * else `undecided`. Losing less than drawn meets the design.
 */
export function verdictOf(ratio: Estimate, allowance = DEFAULT_ALLOWANCE): Verdict {
  if (ratio.high <= 1 + allowance) return 'meets';
  return ratio.low > 1 ? 'exceeds' : 'undecided';
}
