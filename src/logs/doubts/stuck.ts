/** The same value for much longer than this sensor ever rests. */
import type { Quantity } from '../../assessment.ts';
import { LONGEST_STEP, resolutionOf, spacingOf } from '../../series/steps.ts';
import { lastUpTo, type Series } from './series.ts';
import { quantile, sortedSteps, usualStep } from './steps.ts';

/** A thermometer that shows only steps from here on rests for hours honestly [K]. */
export const COARSE_TEMPERATURE = 0.4;

/** What never rests for long with a fine display, and the display that is too coarse to tell, in SI. */
const COARSE: Partial<Record<Quantity, number>> = {
  temperature: COARSE_TEMPERATURE,
  dewPoint: COARSE_TEMPERATURE,
  humidity: 0.02,
  absoluteHumidity: 5e-4,
};

const DAY = 86400;
/** No shorter run is looked at [s], [readings]. */
const SHORTEST = 6 * 3600;
const FEWEST = 12;
/** Other days that must tell how long the sensor rests. */
const DAYS = 3;
/** Three of four other days have no longer rest than this. */
const SHARE_OF_DAYS = 0.75;
/**
 * A run is stuck from so many usual rests on: where the channel leaps out of it, where only other channels of the file
 * move on (the humidity does in a quiet room, too), and without a witness.
 */
const WITNESSED = { leap: 4, others: 6, none: 8 };
/** A leap out of the run, in usual steps. */
const LEAP = 3;
/** Sensors differ in what they show of saturated air [0 to 1], and of melting ice [K]. */
const SATURATED = 0.98;
const MELTING = 0.1;

/**
 * Runs of one value that last at least 6 hours and four times the longest rest of most other days, if the channel then
 * leaps out of it; six times if other channels of the file move on as usual meanwhile; else eight times. The first
 * reading of a run is kept: it was measured, the others only repeat it. A gap ends a run.
 *
 * Kept as honest: displays of 0.4 K or 2 % and coarser, humid air at saturation, a thermometer at 0 °C (melting snow
 * and ice hold it there), and whatever has fewer than three other days to be judged by.
 */
export function stuckReadings(channel: Series, others: readonly Series[]): number[] {
  const { quantity, time, value } = channel;
  const coarse = COARSE[quantity];
  if (coarse === undefined || value.length < FEWEST) return [];
  const spacing = spacingOf(time);
  const reach = Math.max(LONGEST_STEP, 3 * spacing);
  const shortest = Math.max(SHORTEST, (FEWEST - 1) * spacing);
  const starts = runStarts(channel, reach);
  const long = longRuns(channel, starts, shortest);
  if (long.length === 0 || resolutionOf(value) >= coarse) return [];

  const days = restOfDays(time, starts, spacing);
  const leap = LEAP * usualStep(sortedSteps(value));
  const witnesses = others.filter((other) => COARSE[other.quantity] !== undefined).map(paced);
  const isStuck = ({ first, last }: Run): boolean => {
    const usual = usualRest(days, time, first, last);
    const lasts = (rests: number) => time[last] - time[first] >= rests * (usual + spacing);
    const next = last + 1;
    const leaps = () => time[next] - time[last] <= reach && Math.abs(value[next] - value[last]) >= leap;
    const moves = () => witnesses.some((it) => movesOn(it, time[first], time[last]));
    return (
      lasts(WITNESSED.none) || (lasts(WITNESSED.leap) && leaps()) || (lasts(WITNESSED.others) && moves())
    );
  };
  return long
    .filter(isStuck)
    .flatMap(({ first, last }) => Array.from({ length: last - first }, (_, k) => first + 1 + k));
}

interface Run {
  readonly first: number;
  readonly last: number;
}

/** Where the value changes or a gap ends, from the first reading on; the number of readings closes the list. */
function runStarts({ time, value }: Series, reach: number): Uint32Array {
  const starts = new Uint32Array(value.length + 1);
  let count = 1;
  for (let i = 1; i < value.length; i++)
    if (value[i] !== value[i - 1] || time[i] - time[i - 1] > reach) starts[count++] = i;
  starts[count++] = value.length;
  return starts.subarray(0, count);
}

function longRuns({ quantity, time, value }: Series, starts: Uint32Array, shortest: number): Run[] {
  const runs: Run[] = [];
  for (let k = 1; k < starts.length; k++) {
    const first = starts[k - 1];
    const last = starts[k] - 1;
    if (time[last] - time[first] >= shortest && !restsHonestly(quantity, value[first]))
      runs.push({ first, last });
  }
  return runs;
}

/** Values at which an honest sensor rests for days. */
function restsHonestly(quantity: Quantity, value: number): boolean {
  if (quantity === 'humidity') return value >= SATURATED;
  return quantity === 'temperature' && Math.abs(value) <= MELTING;
}

/** The longest rest within each day from the first reading on [s]; NaN for a day with readings for less than half. */
function restOfDays(time: Float64Array, starts: Uint32Array, spacing: number): Float64Array {
  const dayOf = (i: number) => Math.floor((time[i] - time[0]) / DAY);
  const days = new Float64Array(dayOf(time.length - 1) + 1).fill(Number.NaN);
  const count = new Uint32Array(days.length);
  for (let i = 0; i < time.length; i++) count[dayOf(i)]++;
  for (let day = 0; day < days.length; day++) if (count[day] * spacing >= DAY / 2) days[day] = 0;
  for (let k = 1; k < starts.length; k++) {
    const first = starts[k - 1];
    const last = starts[k] - 1;
    for (let day = dayOf(first); day <= dayOf(last); day++) {
      const from = Math.max(time[first], time[0] + day * DAY);
      const to = Math.min(time[last], time[0] + (day + 1) * DAY);
      if (to - from > days[day]) days[day] = to - from;
    }
  }
  return days;
}

/** The longest rest of most days that the run does not touch [s]; NaN, which nothing outlasts, where they are too few. */
function usualRest(days: Float64Array, time: Float64Array, first: number, last: number): number {
  const from = Math.floor((time[first] - time[0]) / DAY);
  const to = Math.floor((time[last] - time[0]) / DAY);
  const rests = days.filter((rest, day) => !Number.isNaN(rest) && (day < from || day > to));
  return rests.length < DAYS ? Number.NaN : quantile(rests.sort(), SHARE_OF_DAYS);
}

type Paced = Series & { readonly pace: number };

/** With the share of its readings that differ from the one before. */
const paced = (series: Series): Paced => ({
  ...series,
  pace: changes(series.value) / Math.max(1, series.value.length - 1),
});

/** At least half as many of its readings as usual differ from the one before. */
function movesOn({ time, value, pace }: Paced, from: number, to: number): boolean {
  const during = value.subarray(Math.max(0, lastUpTo(time, from)), lastUpTo(time, to) + 1);
  return during.length >= FEWEST && changes(during) >= (pace / 2) * (during.length - 1) && pace > 0;
}

function changes(value: Float64Array): number {
  let count = 0;
  for (let i = 1; i < value.length; i++) if (value[i] !== value[i - 1]) count++;
  return count;
}
