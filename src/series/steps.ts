/** How far readings lie apart, in value and in time. */
import { distinctOf } from './distinct.ts';

/** Readings further apart are not joined, unless the logger itself is slower [s]. */
export const LONGEST_STEP = 3600;

/** The smallest step between values that occurs [same unit]; 0 where every value is the same. */
export function resolutionOf(value: Float64Array): number {
  const sorted = distinctOf(value);
  // Nearer than this two numbers of a file were one before their unit was converted.
  const same = 1e-9 * Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) {
    const step = sorted[i] - sorted[i - 1];
    if (step > same && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? smallest : 0;
}

/** Median spacing [s]; 0 with a single reading. */
export function spacingOf(time: Float64Array): number {
  if (time.length < 2) return 0;
  const usual = majorityStep(time);
  if (usual !== null) return usual;
  const steps = new Float64Array(time.length - 1);
  for (let i = 0; i < steps.length; i++) steps[i] = time[i + 1] - time[i];
  steps.sort();
  return steps[steps.length >> 1];
}

/**
 * The step that more than half of all are, which is then their median and found without sorting; null without one.
 * R. S. Boyer and J S. Moore, MJRTY: a fast majority vote algorithm, 1991.
 */
function majorityStep(time: Float64Array): number | null {
  const first = time[1] - time[0];
  if (isMajority(first, time)) return first;
  let candidate = first;
  let lead = 0;
  for (let i = 1; i < time.length; i++) {
    const step = time[i] - time[i - 1];
    if (lead === 0) candidate = step;
    lead += step === candidate ? 1 : -1;
  }
  return isMajority(candidate, time) ? candidate : null;
}

function isMajority(step: number, time: Float64Array): boolean {
  let votes = 0;
  for (let i = 1; i < time.length; i++) if (time[i] - time[i - 1] === step) votes++;
  return 2 * votes > time.length - 1;
}

/** The longest step that a series is drawn across: an hour, or 2.5 spacings of a slower logger [s]. */
export const longestStepOf = (time: Float64Array): number => Math.max(LONGEST_STEP, 2.5 * spacingOf(time));

export interface Gaps {
  readonly count: number;
  /** [s]; 0 without a gap. */
  readonly longest: number;
  /** The readings before the first five. */
  readonly at: readonly number[];
}

/** Steps longer than `longestStepOf`. */
export function gapsOf(time: Float64Array): Gaps {
  const limit = longestStepOf(time);
  const at: number[] = [];
  let count = 0;
  let longest = 0;
  for (let i = 1; i < time.length; i++) {
    const step = time[i] - time[i - 1];
    if (step <= limit) continue;
    if (count++ < 5) at.push(i - 1);
    longest = Math.max(longest, step);
  }
  return { count, longest, at };
}

/** More than one step for ten readings is no whole number of spacings, by a fifth of one. */
export function isIrregular(time: Float64Array): boolean {
  const spacing = spacingOf(time);
  let off = 0;
  for (let i = 1; i < time.length; i++) {
    const spacings = (time[i] - time[i - 1]) / spacing;
    if (Math.abs(spacings - Math.max(1, Math.round(spacings))) > 0.2) off++;
  }
  return off > 0.1 * time.length;
}
