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
/** Different values in such a place. */
const FEWEST_VALUES = 5;

export interface Pair {
  /** Places in the list; the second came later. */
  readonly first: number;
  readonly second: number;
  readonly finding: SenseFinding;
}

export function duplicatesAmong(loggers: readonly SensedLogger[]): Pair[] {
  const resolutions = loggers.map(({ temperature }) => displayStepOf(temperature.value));
  const pairs: Pair[] = [];
  const laid = new Map<string, Recording>();
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
function compare(a: Recording, b: Recording, shift: number): Comparison | null {
  const mayDiffer = (1 - AGREEING) * Math.min(a.time.length, b.time.length) + 1;
  let compared = 0;
  let agree = 0;
  let changes = 0;
  let before = Number.NaN;
  for (let i = 0, j = 0; i < a.time.length && j < b.time.length; ) {
    const ahead = b.time[j] - shift - a.time[i];
    if (ahead < -0.5) j++;
    else if (ahead > 0.5) i++;
    else {
      const x = a.value[i] / a.step;
      const y = b.value[j] / b.step;
      if (!Number.isNaN(x) && !Number.isNaN(y)) {
        compared++;
        const same = roundsAlike(x, y);
        if (same) agree++;
        else if (compared - agree > mayDiffer) return null;
        if (same && x !== before) changes++;
        before = x;
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

/** A log as a display of some step would show it, with what tells its places from one another. */
interface Recording extends Readings {
  /** Of the display [K], and the values in whole steps. */
  readonly step: number;
  readonly whole: Int32Array;
  /** Of how many readings a run is. */
  readonly window: number;
  readonly runs: Int32Array;
  /** Some runs that no other place has by chance, spread over the log, and the instant at which each begins [s]. */
  readonly places: ReadonlyMap<number, number>;
}

function inSteps({ time, value }: Readings, step: number): Recording {
  const whole = new Int32Array(value.length);
  for (let i = 0; i < whole.length; i++) whole[i] = Math.round(value[i] / step);
  const window = Math.max(FEWEST_IN_WINDOW, Math.round(WINDOW / Math.max(1, spacingOf(time))));
  const runs = runsOf(whole, window);
  const stride = Math.max(1, Math.floor((value.length - window) / WINDOWS));
  const places = new Map<number, number>();
  for (let i = 0; i < runs.length; i += stride)
    if (isTelling(whole.subarray(i, i + window))) places.set(runs[i], time[i]);
  return { time, value, step, whole, window, runs, places };
}

/** Enough different values that no other place has the run by chance. */
function isTelling(run: Int32Array): boolean {
  const values = new Set<number>();
  for (let i = 0; i < run.length && values.size < FEWEST_VALUES; i++) values.add(run[i]);
  return values.size >= FEWEST_VALUES;
}

/**
 * For the run from each value on a number that is all but surely its own: a rolling polynomial (R. M. Karp,
 * M. O. Rabin, IBM J. Res. Dev. 31 (1987) 249), modulo 2³².
 */
function runsOf(values: Int32Array, window: number): Int32Array {
  const base = 0x01000193;
  let leaving = 1;
  for (let i = 0; i < window; i++) leaving = Math.imul(leaving, base);
  const runs = new Int32Array(Math.max(0, values.length - window + 1));
  let run = 0;
  for (let i = 0; i < values.length; i++) {
    run = (Math.imul(run, base) + values[i]) | 0;
    if (i >= window) run = (run - Math.imul(leaving, values[i - window])) | 0;
    if (i >= window - 1) runs[i - window + 1] = run;
  }
  return runs;
}

/** The commonest shift between places where both hold the same run of values; none without two that agree. */
function likelyShift({ window, places }: Recording, b: Recording): number[] {
  const runs = b.window === window ? b.runs : runsOf(b.whole, window);
  // asked first, because nearly no run is in a place of the other
  const endings = new Uint8Array(1 << 16);
  for (const run of places.keys()) endings[run & 0xffff] = 1;
  const votes = new Map<number, number>();
  for (let j = 0; j < runs.length; j++) {
    if (endings[runs[j] & 0xffff] === 0) continue;
    const time = places.get(runs[j]);
    if (time === undefined) continue;
    const shift = Math.round(b.time[j] - time);
    votes.set(shift, (votes.get(shift) ?? 0) + 1);
  }
  const [best] = Array.from(votes).sort(([, x], [, y]) => y - x);
  return best && best[1] > 1 && best[0] !== 0 ? [best[0]] : [];
}

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
