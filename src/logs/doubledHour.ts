/** Rows that run through the doubled hour of autumn only once: the usual spacing tells which pass they belong to. */
import { known } from '../series/known.ts';

export interface Passes {
  /** Place of the first row of the second pass; as many as there are rows where all are of the first. */
  readonly from: number;
  /** With these passes every step has the usual spacing, so that no row of the hour is missing. */
  readonly isWhole: boolean;
}

/**
 * The rows stay in the first pass unless more of the steps have the usual spacing when they, or those after a pause
 * among them, are set to the second.
 *
 * @param times   of the rows, all taken as of the first pass [s]
 * @param before  of the row before them [s]; NaN at the beginning of a file
 * @param after   of the row after them [s]; NaN at the end of a file
 * @param longer  how much later the second pass is [s]
 * @param spacing of the record [s]; NaN with a single row
 */
export function passesOf(
  times: readonly number[],
  before: number,
  after: number,
  longer: number,
  spacing: number,
): Passes {
  const all = [before, ...times, after];
  const steps = all.slice(1).map((time, i) => time - all[i]);
  const last = steps.length - 1;
  const fits = (step: number) => Math.abs(step - spacing) <= TOLERANCE * spacing;
  const score = (step: number) => Number(fits(step));
  const rest = score(steps[last] - longer) - score(steps[last]);
  const gains = steps.slice(0, last).map((step) => score(step + longer) - score(step) + rest);
  const most = Math.max(0, ...gains);
  const from = most === 0 ? last : gains.indexOf(most);
  const settled = steps.map((step, i) => {
    if (from === last) return step;
    return i === from ? step + longer : i === last ? step - longer : step;
  });
  return { from, isWhole: settled.every(fits) };
}

/** The median step between rows that follow each other [s], in either direction; NaN where there is none. */
export function usualSpacing(shown: Float64Array): number {
  const there = known(shown);
  const steps = there
    .map((time, i) => (i === 0 ? 0 : Math.abs(time - there[i - 1])))
    .filter((step) => step > 0);
  return steps.length === 0 ? Number.NaN : steps.sort()[steps.length >> 1];
}

/** Of the spacing: clocks and rows rounded to minutes. */
const TOLERANCE = 0.1;
