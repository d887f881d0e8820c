/** Which hours of a record the network is held against: free nights, heated nights, days whose heat is all metered. */
import type { StageNights } from '../../cooling/index.ts';
import { indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { type Span, spanOf } from './spans.ts';

/** Power from which a heater counts as on [W]. */
const ON = 20;
const DAY = 86_400; // [s]
/** Metered heat of a stage that is less than this share of what the design would lose is not all of its heat. PRACTICE. */
const LEAST_SHARE = 0.25;
const FEWEST_DAYS = 3;
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
    const days = meteredDays(record, stage, s, heatLossAsDrawn);
    if (days.length >= FEWEST_DAYS) {
      spans.push(...days);
      for (const { blocks } of days) metered.fill(1, blocks[0].from, blocks[blocks.length - 1].to + 1);
      return;
    }
    for (const { night, window, used, heated, reasons } of stage.nights) {
      if (used && window !== null) spans.push(spanOf(grid, 'free', s, window.first, window.last));
      else if (heated && !reasons.some(({ code }) => code === 'left-out-by-hand')) {
        const span = heatedSpan(record, s, night.noon, night.sunrise);
        if (span === null) continue;
        spans.push(span);
        heatedDates.push(night.date);
        metered.fill(1, span.blocks[0].from, span.blocks[span.blocks.length - 1].to + 1);
      }
    }
  });
  return { spans, metered, heatedDates };
}

/** From when the heater goes on till sunrise; null where too little of that was logged. */
function heatedSpan(record: HouseRecord, stage: number, noon: number, sunrise: number): Span | null {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return null;
  const from = Math.max(0, indexAt(grid, noon));
  const to = Math.min(grid.length - 1, indexAt(grid, sunrise));
  const on = heatingPower.subarray(from, to).findIndex((power) => power > ON);
  if (on < 0 || (to - from - on) * grid.step < SHORTEST_HEATED) return null;
  return known(record, from + on, to) ? spanOf(grid, 'heated', stage, from + on, to) : null;
}

/** Whole days, from the same hour, with temperatures and metered heat all through; the first only warms up. */
function meteredDays(record: HouseRecord, stage: StageNights, s: number, heatLossAsDrawn: number): Span[] {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return [];
  const day = Math.round(DAY / grid.step);
  const first = Math.max(0, indexAt(grid, stage.from)) + day;
  const last = Math.min(grid.length - 1, indexAt(grid, stage.to));
  const days: Span[] = [];
  for (let from = first; from + day <= last; from += day)
    if (known(record, from, from + day) && mostlyMetered(record, from, from + day, heatLossAsDrawn))
      days.push(spanOf(grid, 'metered', s, from, from + day));
  return days;
}

function mostlyMetered(record: HouseRecord, from: number, to: number, heatLossAsDrawn: number): boolean {
  const { heatingPower, insideTemperature, outsideTemperature } = record;
  if (heatingPower === null) return false;
  let heat = 0;
  let difference = 0;
  for (let k = from; k < to; k++) {
    heat += heatingPower[k];
    difference += insideTemperature[k] - outsideTemperature[k];
  }
  return heat > LEAST_SHARE * heatLossAsDrawn * difference;
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
const HOUR = 3600;
