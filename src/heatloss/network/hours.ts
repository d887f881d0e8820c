/** Which hours of a record the network is held against: free nights, heated nights, days whose heat is all metered. */
import type { StageNights } from '../../cooling/index.ts';
import { indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { readOffByEye } from '../readOffByEye.ts';
import { type Span, spanOf } from './spans.ts';

/** Power from which a heater counts as on [W]. */
const ON = 20;
const DAY = 86_400; // [s]
/** Metered heat that is less than this share of what the design would lose meanwhile is not what heats the house. PRACTICE. */
const LEAST_SHARE = 0.25;
const FEWEST_DAYS = 3;
/** Of a long record the coldest stretch of so many nights or days: more tell nothing more (prototype), and cost time. */
const MOST = 42;
const HOUR = 3600; // [s]
/** What the mass holds comes from these days before a night [s], of which no more than this may be missing [s]. */
const MEMORY = 2 * DAY;
const MOST_MISSING = 6 * HOUR;
/** A heated night shorter than this tells nothing of both phases [s]. */
const SHORTEST_HEATED = 6 * 3600;

export interface Hours {
  readonly spans: readonly Span[];
  /** 1 at instants whose heat is all metered. */
  readonly metered: Uint8Array;
  readonly heatedDates: readonly string[];
}

/**
 * @param heatLossAsDrawn to tell a meter of all the heat from one of a single appliance [W/K]
 */
export function hoursOf(record: HouseRecord, stages: readonly StageNights[], heatLossAsDrawn: number): Hours {
  const { grid } = record;
  const metered = new Uint8Array(grid.length);
  const spans: Span[] = [];
  const heatedDates: string[] = [];
  stages.forEach((stage, s) => {
    const days = coldest(meteredDays(record, stage, s, heatLossAsDrawn)).map(({ span }) => span);
    if (days.length >= FEWEST_DAYS) {
      spans.push(...days);
      for (const { blocks } of days) metered.fill(1, blocks[0].from, blocks[blocks.length - 1].to + 1);
      return;
    }
    const free: Candidate[] = [];
    for (const { night, window, used, heated, reasons, meanDifference } of stage.nights) {
      if (used && window !== null) {
        if (settled(record, window.first))
          free.push({
            span: spanOf(grid, 'free', s, window.first, window.last),
            meanDifference: meanDifference ?? 0,
          });
      } else if (heated && !reasons.some(({ code }) => code === 'left-out-by-hand')) {
        const span = heatedSpan(record, s, night.noon, night.sunrise, heatLossAsDrawn);
        if (span === null) continue;
        spans.push(span);
        heatedDates.push(night.date);
        metered.fill(1, span.blocks[0].from, span.blocks[span.blocks.length - 1].to + 1);
      }
    }
    spans.push(...coldest(free).map(({ span }) => span));
  });
  return { spans, metered, heatedDates };
}

interface Candidate {
  readonly span: Span;
  /** [K] */
  readonly meanDifference: number;
}

/** The run of nights, or of days, with the greatest difference of temperatures. */
function coldest(nights: readonly Candidate[]): readonly Candidate[] {
  if (nights.length <= MOST) return nights;
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k + MOST <= nights.length; k++) {
    const sum = nights.slice(k, k + MOST).reduce((all, { meanDifference }) => all + meanDifference, 0);
    if (sum > most) {
      most = sum;
      best = k;
    }
  }
  return nights.slice(best, best + MOST);
}

/** Whether enough was logged before a night to know what the mass holds. */
function settled({ grid, insideTemperature, outsideTemperature }: HouseRecord, first: number): boolean {
  const from = Math.max(0, first - Math.round(MEMORY / grid.step));
  const missing = (values: Float64Array) =>
    values.subarray(from, first).reduce((sum, it) => sum + (Number.isNaN(it) ? grid.step : 0), 0);
  return missing(insideTemperature) <= MOST_MISSING && missing(outsideTemperature) <= MOST_MISSING;
}

/** From when the heater goes on till sunrise; null where too little of that was logged. */
function heatedSpan(
  record: HouseRecord,
  stage: number,
  noon: number,
  sunrise: number,
  heatLossAsDrawn: number,
): Span | null {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return null;
  const from = Math.max(0, indexAt(grid, noon));
  const to = Math.min(grid.length - 1, indexAt(grid, sunrise));
  const night = heatingPower.subarray(from, to);
  const on = night.findIndex((power) => power > ON);
  if (on < 0 || (to - from - on) * grid.step < SHORTEST_HEATED) return null;
  const off = night.findLastIndex((power) => power > ON);
  const first = from + on;
  const last = from + off;
  // Heat that is not known is no heater that is off, unless the spell was read off by eye.
  const byEye = readOffByEye(grid, heatingPower, { first, last, until: to - 1 });
  if (heatingPower.subarray(first, byEye ? last : to).some(Number.isNaN)) return null;
  const enough = heatsTheHouse(record, first, last + 1, heatLossAsDrawn);
  return enough && known(record, first, to) ? spanOf(grid, 'heated', stage, first, to) : null;
}

/** Whole days, from the same hour, with temperatures and metered heat all through; the first only warms up. */
function meteredDays(
  record: HouseRecord,
  stage: StageNights,
  s: number,
  heatLossAsDrawn: number,
): Candidate[] {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return [];
  const day = Math.round(DAY / grid.step);
  const first = Math.max(0, indexAt(grid, stage.from)) + day;
  const last = Math.min(grid.length - 1, indexAt(grid, stage.to));
  const days: Candidate[] = [];
  for (let from = first; from + day <= last; from += day)
    if (known(record, from, from + day) && heatsTheHouse(record, from, from + day, heatLossAsDrawn))
      days.push({
        span: spanOf(grid, 'metered', s, from, from + day),
        meanDifference: differenceOver(record, from, from + day),
      });
  return days;
}

/** Whether what was metered is heat that a house is heated with, rather than one appliance's. */
function heatsTheHouse(record: HouseRecord, from: number, to: number, heatLossAsDrawn: number): boolean {
  const { heatingPower, insideTemperature, outsideTemperature } = record;
  if (heatingPower === null) return false;
  let heat = 0;
  let difference = 0;
  for (let k = from; k < to; k++) {
    heat += heatingPower[k];
    const apart = insideTemperature[k] - outsideTemperature[k];
    if (!Number.isNaN(apart)) difference += apart;
  }
  return difference > 0 && heat > LEAST_SHARE * heatLossAsDrawn * difference;
}

/** Inside less outside on average [K]. */
function differenceOver(
  { insideTemperature, outsideTemperature }: HouseRecord,
  from: number,
  to: number,
): number {
  let sum = 0;
  let count = 0;
  for (let k = from; k < to; k++) {
    const apart = insideTemperature[k] - outsideTemperature[k];
    if (Number.isNaN(apart)) continue;
    sum += apart;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

/** No more than an hour of either temperature is missing. */
function known(
  { grid, insideTemperature, outsideTemperature }: HouseRecord,
  from: number,
  to: number,
): boolean {
  const missing = (values: Float64Array) =>
    values.subarray(from, to + 1).reduce((sum, it) => sum + (Number.isNaN(it) ? 1 : 0), 0) * grid.step;
  return missing(insideTemperature) <= HOUR && missing(outsideTemperature) <= HOUR;
}

const STRETCH = 4 * HOUR;
/** A difference at which a house is heated in earnest [K]. On mild days any plug could pass for a heater. PRACTICE. */
const EARNEST = 8;

/**
 * Whether a meter ever told of what heats the house: in some four hours as much as a good part of what the design
 * loses in earnest cold. A fridge's plug, logged day and night, never does.
 */
export function metersHeating({ grid, heatingPower }: HouseRecord, heatLossAsDrawn: number): boolean {
  if (heatingPower === null) return false;
  const stretch = Math.round(STRETCH / grid.step);
  const needed = LEAST_SHARE * heatLossAsDrawn * EARNEST * stretch;
  for (let from = 0; from + stretch <= grid.length; from += stretch / 2) {
    const known = heatingPower.subarray(from, from + stretch).filter((it) => !Number.isNaN(it));
    const heat = known.reduce((sum, it) => sum + it, 0);
    if (heat > needed) return true;
  }
  return false;
}
