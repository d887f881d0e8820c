/** One to three readings far off both neighbours. */
import type { Quantity } from '../../assessment.ts';
import { spacingOf } from '../../series/steps.ts';
import { meterSpikes } from './meterSpike.ts';
import type { Series } from './series.ts';
import { largestStep, quantile, sortedSteps } from './steps.ts';

/** The least height of a spike, in SI: what no room does and undoes within twenty minutes. */
const LEAST_HEIGHT: Partial<Record<Quantity, number>> = {
  temperature: 3,
  dewPoint: 4,
  humidity: 0.15,
  absoluteHumidity: 3e-3,
};
/**
 * A sunbeam, a shower or an opened window comes and goes within an hour or two; so beyond twenty minutes from
 * neighbour to neighbour the least height grows by three times itself each hour: 3 K at 10 minutes, 18 K at hourly readings.
 */
const QUICK = 1200;
const GROWTH = 3 / 3600;

/** Readings in one spike at most. */
const WIDEST = 3;
/** Height in the median step of the whole channel, and of the readings around it. */
const MEDIAN_STEPS = 8;
/** Readings on each side that tell the local step, and of these the nearest that tell the local level. */
const AROUND = 24;
const LEVEL = 4;
/** So few readings tell nothing of a record yet. */
const FEWEST = 10;
/** The neighbours may differ by this share of the height, or by this many local steps: else it is a step or a decay. */
const RETURN_SHARE = 0.2;
const RETURN_STEPS = 3;

/**
 * Readings that leap off and back. The neighbours on both sides must be there, within three spacings each, so the
 * first and last readings and those beside a gap are never spikes; and all readings between must lie beyond both.
 * Wind, sun, power and energy leap honestly: not looked at. Of a meter see `meterSpikes`.
 */
export function spikes({ quantity, time, value }: Series): number[] {
  if (quantity === 'meter') return meterSpikes(value, WIDEST);
  const least = LEAST_HEIGHT[quantity];
  if (least === undefined || value.length <= FEWEST) return [];
  if (largestStep(value) < least) return [];
  const wild = MEDIAN_STEPS * quantile(sortedSteps(value), 0.5);
  const reach = 3 * spacingOf(time);
  const found: number[] = [];

  const isSpike = (before: number, first: number, after: number): boolean => {
    if (time[first] - time[before] > reach || time[after] - time[after - 1] > reach) return false;
    const up = value[first] > value[before] ? 1 : -1;
    const height = clearance(value, before, first, after, up);
    const span = time[after] - time[before];
    if (height < wild || height < least * (1 + GROWTH * Math.max(0, span - QUICK))) return false;
    const local = quantile(sortedSteps(value.subarray(Math.max(0, first - AROUND), after + AROUND)), 0.5);
    const back = Math.abs(value[after] - value[before]);
    const level = levelAround(value, first, after);
    const isLevel = (i: number) => Math.abs(value[i] - level) <= height / 2;
    return (
      height >= MEDIAN_STEPS * local &&
      back <= Math.max(RETURN_SHARE * height, RETURN_STEPS * local) &&
      isLevel(before) &&
      isLevel(after)
    );
  };

  let before = 0;
  for (let first = 1; first < value.length - 1; ) {
    let after = first + 1;
    const end = Math.min(first + WIDEST, value.length - 1);
    while (after <= end && !isSpike(before, first, after)) after++;
    if (after <= end) while (first < after) found.push(first++);
    else before = first++;
  }
  return found;
}

/** How far all readings between two lie beyond both, upwards or downwards; negative where one does not. */
function clearance(value: Float64Array, before: number, first: number, after: number, up: 1 | -1): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = first; i < after; i++) nearest = Math.min(nearest, up * value[i]);
  return nearest - Math.max(up * value[before], up * value[after]);
}

/**
 * Median of the nearest readings on both sides. It tells the good reading between two spikes, and the top of a peak that
 * rises and falls over some readings.
 */
function levelAround(value: Float64Array, first: number, after: number): number {
  const left = Math.max(0, first - LEVEL);
  const near = new Float64Array(first - left + Math.min(LEVEL, value.length - after));
  near.set(value.subarray(left, first));
  near.set(value.subarray(after, after + LEVEL), first - left);
  return quantile(near.sort(), 0.5);
}
