/** Zeros of a sensor that gave nothing. */
import type { Quantity } from '../../assessment.ts';
import { LONGEST_STEP, spacingOf } from '../../series/steps.ts';
import { lastUpTo, type Series } from './series.ts';
import { quantile, sortedSteps } from './steps.ts';

/** Nothing of the file's own unit, where honest readings pass through it: 0 °C, 0 °F, 0 K [°C]. */
const PASSABLE: Partial<Record<Quantity, readonly number[]>> = {
  temperature: [0, -160 / 9, -273.15],
  dewPoint: [0, -160 / 9, -273.15],
};
/** How far from zero the readings beside it must lie where no honest zero exists, in SI. */
const IMPOSSIBLE: Partial<Record<Quantity, number>> = {
  humidity: 0.1,
  absoluteHumidity: 1e-3,
  pressure: 3e4,
  carbonDioxide: 1e-4,
};
/** Of the conversion from °F and K [K]. */
const ROUNDING = 1e-6;
/** A leap into zero, and out of it [K], and in usual steps of the channel. */
const LEAP = 5;
const LEAP_IN_STEPS = 8;
/** Readings that must follow a zero at the beginning of the record, or go before one at its end. */
const FOLLOWING = 4;

/**
 * Runs of exact zeros among readings that are nowhere near. A temperature passes through 0 °C honestly, so there a run
 * is doubted only if the channel leaps into it and back to the same side, by 5 K and by 8 usual steps; a run at the
 * beginning or end of the record or beside a gap if the four readings on its other side lie twice as far away.
 * Humidity, pressure and carbon dioxide are never 0. Wind, sun, power, energy and meters often are: not looked at.
 */
export function falseZeros(channel: Series, others: readonly Series[]): number[] {
  const { quantity, value } = channel;
  const far = IMPOSSIBLE[quantity];
  if (far !== undefined) {
    const isFar = (i: number) => value[i] === undefined || Math.abs(value[i]) > far;
    return runsAt(value, 0)
      .filter(([first, end]) => end - first < value.length && isFar(first - 1) && isFar(end))
      .flatMap(places);
  }
  return (PASSABLE[quantity] ?? []).flatMap((zero) => leapsTo(zero, channel, others)).sort((i, j) => i - j);
}

type Run = readonly [first: number, end: number];

const places = ([first, end]: Run) => Array.from({ length: end - first }, (_, k) => first + k);

function runsAt(value: Float64Array, zero: number): Run[] {
  const runs: Run[] = [];
  for (let i = 0; i < value.length; i++) {
    if (Math.abs(value[i] - zero) > ROUNDING) continue;
    const first = i;
    while (i < value.length && Math.abs(value[i] - zero) <= ROUNDING) i++;
    runs.push([first, i]);
  }
  return runs;
}

function leapsTo(zero: number, { time, value }: Series, others: readonly Series[]): number[] {
  const runs = runsAt(value, zero);
  if (runs.length === 0) return [];
  const reach = Math.max(LONGEST_STEP, 3 * spacingOf(time));
  const high = runs.map((run) => leapOf(run, zero, { time, value }, reach)).filter(({ size }) => size > LEAP);
  if (high.length === 0) return [];
  const steps = sortedSteps(value.filter((it) => Math.abs(it - zero) > ROUNDING));
  const least = Math.max(LEAP, LEAP_IN_STEPS * quantile(steps, 0.5));
  const warm = others.filter((other) => other.quantity === 'temperature');

  /** A logger that was carried from the cold into the warm takes its other thermometer along. */
  const cameAlong = (at: number, later: number) =>
    warm.some((other) => {
      const then = Math.abs(valueAt(other, time[at]) - zero);
      return then > ROUNDING && then < least && Math.abs(valueAt(other, time[later]) - zero) > 2 * least;
    });
  return high
    .filter(({ size, edge }) => size > least && !(edge && cameAlong(edge.at, edge.later)))
    .flatMap(({ run }) => places(run));
}

interface Leap {
  readonly run: Run;
  /** What the readings around it clear; 0 where they do not tell. */
  readonly size: number;
  /** At an end of the record or a gap: its outermost reading, and the furthest that was looked at beyond it. */
  readonly edge: { readonly at: number; readonly later: number } | null;
}

function leapOf(
  run: Run,
  zero: number,
  { time, value }: Pick<Series, 'time' | 'value'>,
  reach: number,
): Leap {
  const [first, end] = run;
  const hasBefore = first > 0 && time[first] - time[first - 1] <= reach;
  const hasAfter = end < value.length && time[end] - time[end - 1] <= reach;
  if (hasBefore && hasAfter) {
    const before = value[first - 1] - zero;
    const after = value[end] - zero;
    return { run, size: before * after > 0 ? Math.min(Math.abs(before), Math.abs(after)) : 0, edge: null };
  }
  /** All readings of one side, where they are many enough, lie far: by their middle. */
  const half = (from: number, to: number) =>
    from >= 0 && to <= value.length ? middleDistance(value.slice(from, to), zero) / 2 : 0;
  if (hasAfter)
    return { run, size: half(end, end + FOLLOWING), edge: { at: end - 1, later: end + FOLLOWING - 1 } };
  if (hasBefore)
    return { run, size: half(first - FOLLOWING, first), edge: { at: first, later: first - FOLLOWING } };
  return { run, size: 0, edge: null };
}

function middleDistance(values: Float64Array, zero: number): number {
  const sorted = values.sort();
  return Math.abs((sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2 - zero);
}

const valueAt = ({ time, value }: Series, instant: number): number => value[lastUpTo(time, instant)];
