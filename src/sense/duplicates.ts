/** Two loggers that are one recording: the same values, perhaps at shifted times or rounded otherwise. */
import { spacingOf } from '../series/steps.ts';
import type { SenseFinding } from './finding.ts';
import { quantileOf, whereOf } from './scene.ts';
import type { Readings, SensedLogger } from './sensed.ts';

/** Of the readings compared, how many must agree, how many there must be, and how often the values must change. */
const AGREEING = 0.995;
const FEWEST_READINGS = 100;
const FEWEST_CHANGES = 30;
/** [s] What tells one place of a recording from all others, in readings at least, and how many such places are tried. */
const WINDOW = 4 * 3600;
const FEWEST_IN_WINDOW = 24;
const WINDOWS = 200;

export interface Pair {
  /** Places in the list; the second came later. */
  readonly first: number;
  readonly second: number;
  readonly finding: SenseFinding;
}

export function duplicatesAmong(loggers: readonly SensedLogger[]): Pair[] {
  const resolutions = loggers.map(({ temperature }) => displayStepOf(temperature.value));
  const pairs: Pair[] = [];
  const laid = new Map<string, Readings>();
  const inStepsOf = (logger: number, resolution: number) => {
    const key = `${logger}/${resolution}`;
    const known = laid.get(key) ?? inSteps(loggers[logger].temperature, resolution);
    laid.set(key, known);
    return known;
  };
  for (let first = 0; first < loggers.length; first++)
    for (let second = first + 1; second < loggers.length; second++) {
      const resolution = Math.max(resolutions[first], resolutions[second]);
      if (resolution === 0) continue;
      const a = inStepsOf(first, resolution);
      const b = inStepsOf(second, resolution);
      const shifts = [0, ...likelyShift(a, b)];
      const best = shifts.map((shift) => compare(a, b, shift)).find((it) => it !== null && isSame(it));
      if (best === undefined || best === null) continue;
      pairs.push({
        first,
        second,
        finding: {
          code: 'same-recording',
          where: whereOf(loggers[second]),
          other: whereOf(loggers[first]),
          ...best,
          shift: 0 - best.shift,
          resolution: resolutions[second],
          otherResolution: resolutions[first],
          offers: [],
        },
      });
    }
  return pairs;
}

interface Comparison {
  readonly shift: number;
  readonly compared: number;
  readonly agree: number;
  readonly changes: number;
}

const isSame = ({ compared, agree, changes }: Comparison) =>
  compared >= FEWEST_READINGS && changes >= FEWEST_CHANGES && agree >= AGREEING * compared;

/** Readings at the same instant, once the second's clock is set back by the shift; null once too many differ. */
function compare(a: Readings, b: Readings, shift: number): Comparison | null {
  const mayDiffer = (1 - AGREEING) * Math.min(a.time.length, b.time.length) + 1;
  let [compared, agree, changes] = [0, 0, 0];
  let before = Number.NaN;
  for (let i = 0, j = 0; i < a.time.length && j < b.time.length; ) {
    const ahead = b.time[j] - shift - a.time[i];
    if (ahead < -0.5) j++;
    else if (ahead > 0.5) i++;
    else {
      if (!Number.isNaN(a.value[i]) && !Number.isNaN(b.value[j])) {
        compared++;
        const same = roundsAlike(a.value[i], b.value[j]);
        if (same) agree++;
        else if (compared - agree > mayDiffer) return null;
        if (same && a.value[i] !== before) changes++;
        before = a.value[i];
      }
      i++;
      j++;
    }
  }
  return { shift, compared, agree, changes };
}

/** Whether two values, in steps, round to the same; a half is rounded up by one program and down by another. */
const roundsAlike = (a: number, b: number) =>
  Math.round(a) === Math.round(b) || (Math.abs(a - b) <= 0.5 + HALF && (isHalf(a) || isHalf(b)));

const HALF = 1e-3;
const isHalf = (value: number) => Math.abs(Math.abs(value % 1) - 0.5) < HALF;

/** The commonest shift between places where both hold the same run of values; none without two that agree. */
function likelyShift(a: Readings, b: Readings): number[] {
  const window = Math.max(FEWEST_IN_WINDOW, Math.round(WINDOW / Math.max(1, spacingOf(a.time))));
  const stride = Math.max(1, Math.floor((a.value.length - window) / WINDOWS));
  const places = new Map<number, number>();
  eachRun(a.value, window, (i, run) => {
    if (i % stride === 0 && isTelling(a.value.subarray(i, i + window))) places.set(run, a.time[i]);
  });
  const votes = new Map<number, number>();
  eachRun(b.value, window, (j, run) => {
    const time = places.get(run);
    if (time === undefined) return;
    const shift = Math.round(b.time[j] - time);
    votes.set(shift, (votes.get(shift) ?? 0) + 1);
  });
  const [best] = Array.from(votes).sort(([, x], [, y]) => y - x);
  return best && best[1] > 1 && best[0] !== 0 ? [best[0]] : [];
}

/** Enough different values that no other place has the run by chance. */
const isTelling = (run: Float64Array) => new Set(run.map(Math.round)).size >= 5;

/**
 * Calls with the beginning of every run of so many values and a number that is all but surely its own: a rolling
 * polynomial (R. M. Karp, M. O. Rabin, IBM J. Res. Dev. 31 (1987) 249), modulo 2³².
 */
function eachRun(values: Float64Array, window: number, call: (from: number, run: number) => void) {
  const base = 0x01000193;
  let leaving = 1;
  for (let i = 0; i < window; i++) leaving = Math.imul(leaving, base);
  let run = 0;
  for (let i = 0; i < values.length; i++) {
    run = (Math.imul(run, base) + Math.round(values[i])) | 0;
    if (i >= window) run = (run - Math.imul(leaving, Math.round(values[i - window]))) | 0;
    if (i >= window - 1) call(i - window + 1, run);
  }
}

const inSteps = ({ time, value }: Readings, resolution: number): Readings => ({
  time,
  value: value.map((it) => it / resolution),
});

/** The step of the display [K]: the smallest that is common, in a few thousand spread over the log; 0 where nothing changes. */
export function displayStepOf(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / 5000));
  const steps: number[] = [];
  for (let i = 1; i < values.length; i += stride) {
    const step = Math.abs(values[i] - values[i - 1]);
    if (step > 1e-6) steps.push(step);
  }
  return steps.length === 0 ? 0 : quantileOf(steps, 0.02);
}
