/** Each night judged: did the shell cool freely, and for long enough to learn from? */

import { median } from 'simple-statistics';
import { indexAt, timeAt, timesBetween } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { Night } from '../sky/nights.ts';
import { type DecayFit, fitDecay } from './decay.ts';
import type { NightReason } from './reasons.ts';
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
const BEYOND_USUAL = 1.5;
const LEAST_HEAT = 0.1 * 3.6e6; // [J] that makes a night a heated one

/** Judges every night against the record; the decisions taken by hand come last and win. */
export function judgeNights(
  record: HouseRecord,
  nights: readonly Night[],
  decisions: readonly HandDecision[] = [],
): JudgedNight[] {
  const heats = nights.map((night) => heatBetween(record, night.sunset, night.sunrise));
  const usualHeat = heats.length === 0 ? 0 : median(heats);
  return nights.map((night, i) => {
    const judged = judgeNight(record, night, heats[i], usualHeat);
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
 * @param heat      metered between sunset and sunrise [J]
 * @param usualHeat of the record's nights: where every evening is heated and metered, the nights after it are as
 *                  free as in a house that meters nothing; a night heated beyond that is a test of its own [J]
 */
function judgeNight(record: HouseRecord, night: Night, heat: number, usualHeat: number): JudgedNight {
  const { grid, insideTemperature: inside, outsideTemperature: outside } = record;
  const heated = heat >= LEAST_HEAT;
  const beyondUsual = heat >= LEAST_HEAT + BEYOND_USUAL * usualHeat;
  const reasons: NightReason[] = beyondUsual ? [{ code: 'heater-on', energy: heat }] : [];

  const window = coolingWindow(grid, inside, night, record.insideResolution);
  if (window === null) return { ...nothing(night, heated), reasons: [...reasons, noWindow(record, night)] };
  const { first, last } = window;
  const times = timesBetween(grid, first, last);
  const indoor = inside.subarray(first, last + 1);
  const outdoor = outside.subarray(first, last + 1);
  const duration = (last - first) * grid.step;
  const missingInside = countMissing(indoor) * grid.step;
  const missingOutside = countMissing(outdoor) * grid.step;
  if (missingOutside > LONGEST_GAP) {
    const code = missingOutside > duration ? 'no-outside-readings' : 'gap-outside';
    const reason: NightReason = code === 'gap-outside' ? { code, missing: missingOutside } : { code };
    return { ...nothing(night, heated), reasons: [...reasons, reason] };
  }
  if (missingInside > LONGEST_GAP) reasons.push({ code: 'gap-inside', missing: missingInside });

  const heatWithin = heatBetween(record, timeAt(grid, first), timeAt(grid, last));
  if (heatWithin >= LEAST_HEAT && !beyondUsual) reasons.push({ code: 'heater-on', energy: heatWithin });
  const bridged = bridgeGaps(outdoor);
  const seen = indoor.filter((value) => !Number.isNaN(value));
  const drop = seen[0] - seen[seen.length - 1];
  const meanDifference = meanOfPairs(indoor, bridged);
  if (duration < SHORTEST_WINDOW) reasons.push({ code: 'too-short', duration, needed: SHORTEST_WINDOW });
  if (meanDifference < SMALLEST_DIFFERENCE)
    reasons.push({ code: 'difference-too-small', difference: meanDifference, needed: SMALLEST_DIFFERENCE });
  if (drop < Math.max(LEAST_DROP, 2 * record.insideResolution)) reasons.push({ code: 'barely-fell', drop });

  const fit = fitDecay(times, indoor, bridged);
  if (fit.kind === 'fitted' && fit.rms > Math.max(LARGEST_RMS, record.insideResolution))
    reasons.push({ code: 'uneven-fall', rms: fit.rms });
  if (fit.kind === 'not fitted' && reasons.length === 0) reasons.push({ code: 'barely-fell', drop });
  return {
    night,
    window,
    fit,
    drop,
    meanDifference,
    duration,
    heated,
    used: reasons.length === 0,
    reasons,
  };
}

const nothing = (night: Night, heated: boolean) => ({
  night,
  window: null,
  fit: null,
  drop: null,
  meanDifference: null,
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

/** Short gaps of the driver bridged by straight lines, its ends held; the readings fitted are never bridged. */
function bridgeGaps(values: Float64Array): Float64Array {
  const out = values.slice();
  let before = -1;
  for (let i = 0; i < out.length; i++) {
    if (Number.isNaN(out[i])) continue;
    for (let k = before + 1; k < i; k++)
      out[k] = before < 0 ? out[i] : out[before] + ((out[i] - out[before]) * (k - before)) / (i - before);
    before = i;
  }
  for (let k = before + 1; k < out.length; k++) out[k] = out[before];
  return out;
}

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
