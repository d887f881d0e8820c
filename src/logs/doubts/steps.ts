/** How far a series goes from one reading to the next. */

/** Sizes of all steps, the smallest first; one fewer than there are values. */
export function sortedSteps(value: Float64Array): Float64Array {
  const steps = new Float64Array(Math.max(0, value.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = Math.abs(value[i + 1] - value[i]);
  return steps.sort();
}

/** The size of the largest step; 0 where there are none. */
export function largestStep(value: Float64Array): number {
  let largest = 0;
  for (let i = 1; i < value.length; i++) largest = Math.max(largest, Math.abs(value[i] - value[i - 1]));
  return largest;
}

/** The value that `share` of the sorted ones do not exceed; 0 where there are none. */
export const quantile = (sorted: Float64Array, share: number): number =>
  sorted.length === 0 ? 0 : sorted[Math.floor(share * (sorted.length - 1))];

/** The middle one of the steps that are no rest; 0 where nothing moves. */
export function usualStep(sorted: Float64Array): number {
  const first = sorted.findIndex((step) => step > 0);
  return first < 0 ? 0 : quantile(sorted.subarray(first), 0.5);
}
