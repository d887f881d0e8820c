/** Each night judged: did the shell cool freely, and for long enough to learn from? */

import { median } from 'simple-statistics';
import { indexAt, timeAt, timesBetween } from '../series/grid.ts';
import { known } from '../series/known.ts';
import type { HouseRecord } from '../series/record.ts';
import type { Night } from '../sky/nights.ts';
import { type DecayFit, fitDecay } from './decay.ts';
import { bridgeGaps, driverOf, type Neighbour } from './driver.ts';
import { outdoorDoubts } from './outdoorDoubts.ts';
import type { NightReason } from './reasons.ts';
import { suddenFalls } from './suddenFall.ts';
import { heatCameIn, heatingCycled, roomWarmed, sunStillOn } from './warmed.ts';
import { type CoolingWindow, coolingWindow } from './window.ts';

export interface JudgedNight {
  readonly night: Night;
  /** The hours that are fitted; null when there were none. */
  readonly window: CoolingWindow | null;
  readonly fit: DecayFit | null;
  /** Fall of the inside temperature over the window [K]. */
  readonly drop: number | null;
  /** Mean of inside less outside over the window [K]. */
  readonly meanDifference: number | null;
  /** Mean of inside less what drives the fall, a neighbour counted by its share [K]; else the same. */
  readonly drivingDifference: number | null;
  /** Length of the window [s]. */
  readonly duration: number | null;
  /** A metered heater was on. */
  readonly heated: boolean;
  /** Pooled into the time constant. */
  readonly used: boolean;
  readonly reasons: readonly NightReason[];
}

/** What was decided by hand for the evening of a date. */
export interface HandDecision {
  readonly date: string;
  readonly used: boolean;
  readonly why?: string | undefined;
}

const SHORTEST_WINDOW = 4 * 3600; // [s]
const SMALLEST_DIFFERENCE = 3; // [K]
const LONGEST_GAP = 3600; // [s], in all over the window
const LEAST_DROP = 0.2; // [K], or twice the loggers' resolution where that is coarser
const LARGEST_RMS = 0.25; // [K], or the resolution where that is coarser
const MORNING = 3600; // [s] before sunrise
const BEYOND_USUAL = 1.5;
const LEAST_HEAT = 0.1 * 3.6e6; // [J] that makes a night a heated one

/**
 * Judges every night against the record; the decisions taken by hand come last and win.
 *
 * @param neighbour what lies behind elements to an adjacent space; null when there are none
 */
export function judgeNights(
  record: HouseRecord,
  nights: readonly Night[],
  decisions: readonly HandDecision[] = [],
  neighbour: Neighbour | null = null,
): JudgedNight[] {
  const driver = driverOf(record, neighbour);
  const heats = nights.map((night) => heatBetween(record, night.sunset, night.sunrise));
  const usualHeat = heats.length === 0 ? 0 : median(heats);
  return nights.map((night, i) => {
    const judged = judgeNight(record, driver, night, heats[i], usualHeat);
    const decision = decisions.find(({ date }) => date === night.date);
    if (decision === undefined) return judged;
    const code = decision.used ? 'put-in-by-hand' : 'left-out-by-hand';
    return {
      ...judged,
      used: decision.used && judged.fit?.kind === 'fitted',
      reasons: [...judged.reasons, { code, why: decision.why ?? null }],
    };
  });
}

/**
 * @param driver    what the house cools towards, on the grid [°C]
 * @param heat      metered between sunset and sunrise [J]
 * @param usualHeat of the record's nights: where every evening is heated and metered, the nights after it are as
 *                  free as in a house that meters nothing; a night heated beyond that is a test of its own [J]
 */
function judgeNight(
  record: HouseRecord,
  driver: Float64Array,
  night: Night,
  heat: number,
  usualHeat: number,
): JudgedNight {
  const { grid, insideTemperature: inside, outsideTemperature: outside } = record;
  const heated = heat >= LEAST_HEAT;
  const beyondUsual = heat >= LEAST_HEAT + BEYOND_USUAL * usualHeat;
  const reasons: NightReason[] = beyondUsual ? [{ code: 'heater-on', energy: heat }] : [];

  const window = coolingWindow(grid, inside, night, record.insideResolution);
  if (window === null) {
    const why = [
      noWindow(record, night),
      ...heatingCycled(record, night, null),
      ...openings(record, night, null),
    ];
    return { ...nothing(night, heated), reasons: [...reasons, ...why] };
  }
  const { first, last } = window;
  const times = timesBetween(grid, first, last);
  const over = (series: Float64Array) => series.subarray(first, last + 1);
  const indoor = over(inside);
  const duration = (last - first) * grid.step;
  const missing = (series: Float64Array) => countMissing(over(series)) * grid.step;
  const missingOutside = missing(outside);
  if (missingOutside > LONGEST_GAP) {
    const code = missingOutside > duration ? 'no-outside-readings' : 'gap-outside';
    const reason: NightReason = code === 'gap-outside' ? { code, missing: missingOutside } : { code };
    return { ...nothing(night, heated), reasons: [...reasons, reason] };
  }
  if (missing(driver) > LONGEST_GAP) {
    const reason: NightReason = { code: 'gap-neighbour', missing: missing(driver) };
    return { ...nothing(night, heated), reasons: [...reasons, reason] };
  }
  if (missing(inside) > LONGEST_GAP) reasons.push({ code: 'gap-inside', missing: missing(inside) });

  const heatWithin = heatBetween(record, timeAt(grid, first), timeAt(grid, last));
  if (heatWithin >= LEAST_HEAT && !beyondUsual) reasons.push({ code: 'heater-on', energy: heatWithin });
  const driving = bridgeGaps(over(driver));
  const seen = known(indoor);
  const drop = seen[0] - seen[seen.length - 1];
  const drivingDifference = meanOfPairs(indoor, driving);
  const tooShort = duration < SHORTEST_WINDOW;
  if (tooShort) reasons.push({ code: 'too-short', duration, needed: SHORTEST_WINDOW });
  if (drivingDifference < SMALLEST_DIFFERENCE)
    reasons.push({
      code: 'difference-too-small',
      difference: drivingDifference,
      needed: SMALLEST_DIFFERENCE,
    });
  else reasons.push(...outdoorDoubts(record, night, window));
  if (drop < Math.max(LEAST_DROP, 2 * record.insideResolution)) reasons.push({ code: 'barely-fell', drop });
  reasons.push(
    ...heatingCycled(record, night, tooShort ? null : window),
    ...openings(record, night, tooShort ? null : window),
    ...roomWarmed(record, window),
    ...sunStillOn(record, window),
  );

  const fit = fitDecay(times, indoor, driving);
  const uneven = fit.kind === 'fitted' && fit.rms > Math.max(LARGEST_RMS, record.insideResolution);
  if (uneven && !reasons.some(({ code }) => EXPLAINS_UNEVEN.has(code))) {
    const why = heatCameIn(record, night, window);
    reasons.push(...(why.length > 0 ? why : [{ code: 'uneven-fall', rms: fit.rms } as const]));
  }
  if (fit.kind === 'not fitted' && reasons.length === 0) reasons.push({ code: 'barely-fell', drop });
  return {
    night,
    window,
    fit,
    drop,
    meanDifference: meanOfPairs(indoor, bridgeGaps(over(outside))),
    drivingDifference,
    duration,
    heated,
    used: reasons.length === 0,
    reasons,
  };
}

/** With one of these said, that the fall is uneven is no news. */
const EXPLAINS_UNEVEN: ReadonlySet<NightReason['code']> = new Set([
  'heater-on',
  'heating-cycled',
  'opened',
  'room-warmed',
]);

/** Openings within the window; where there was next to none, those of the night, but not the first door of the morning. */
function openings(
  { grid, insideTemperature, insideResolution }: HouseRecord,
  night: Night,
  window: CoolingWindow | null,
): NightReason[] {
  const beforeSunrise = (at: number) => night.sunrise - timeAt(grid, at);
  return suddenFalls(grid, insideTemperature, night, insideResolution)
    .filter(({ whileCooling }) => whileCooling)
    .filter(({ at }) =>
      window === null ? beforeSunrise(at) > MORNING : at >= window.first && at < window.last,
    )
    .map(({ at, fall }) => ({ code: 'opened', fall, beforeSunrise: beforeSunrise(at) }));
}

const nothing = (night: Night, heated: boolean) => ({
  night,
  window: null,
  fit: null,
  drop: null,
  meanDifference: null,
  drivingDifference: null,
  duration: null,
  heated,
  used: false,
});

function noWindow({ grid, insideTemperature, outsideTemperature }: HouseRecord, night: Night): NightReason {
  const from = Math.max(0, indexAt(grid, night.sunset));
  const to = indexAt(grid, night.sunrise);
  const empty = (values: Float64Array) => values.subarray(from, to + 1).every(Number.isNaN);
  if (empty(insideTemperature)) return { code: 'no-inside-readings' };
  return empty(outsideTemperature) ? { code: 'no-outside-readings' } : { code: 'no-cooling-window' };
}

/** Metered heat between two instants [J]; what is not known counts as none. */
export function heatBetween({ grid, heatingPower }: HouseRecord, from: number, to: number): number {
  if (heatingPower === null) return 0;
  return heatingPower
    .subarray(Math.max(0, indexAt(grid, from)), Math.max(0, indexAt(grid, to) + 1))
    .reduce((sum, power) => sum + (Number.isNaN(power) ? 0 : power * grid.step), 0);
}

const countMissing = (values: Float64Array) => values.reduce((n, v) => n + (Number.isNaN(v) ? 1 : 0), 0);

function meanOfPairs(indoor: Float64Array, outdoor: Float64Array): number {
  let sum = 0;
  let n = 0;
  indoor.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    sum += value - outdoor[i];
    n++;
  });
  return sum / n;
}
