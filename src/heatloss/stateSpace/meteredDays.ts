/** The days of a stage whose heat is all metered. */
import { indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';

export interface MeteredDays {
  /** First and last cell of them, days between that do not count included. */
  readonly first: number;
  readonly last: number;
  /** Of the days that count [W], NaN elsewhere; as long as the grid. */
  readonly heat: Float64Array;
  readonly used: number;
  /** Of the same stretch: for gaps or too little heat. */
  readonly leftOut: number;
  /** Whether the stage has more days than are taken: then these are its coldest stretch. */
  readonly coldest: boolean;
}

const DAY = 86_400; // [s]
/** Fewer hardly tell what a mass holds back from what is lost. PRACTICE. */
const FEWEST_DAYS = 5;
/** Of a long record the coldest stretch: more days cost time. */
const MOST_DAYS = 28;
/** Of a day, so much of heat and temperatures must be known [–]. */
const MOSTLY = 0.9;
/** Metered heat that is less than this share of what the design would lose meanwhile is not what heats the house. PRACTICE. */
const LEAST_SHARE = 0.25;

/**
 * @param heatLossAsDrawn to tell a meter of all the heat from one of a single appliance [W/K]; any heat counts without
 * @returns null with too few
 */
export function meteredDays(
  record: HouseRecord,
  { from, to }: { readonly from: number; readonly to: number },
  heatLossAsDrawn: number,
): MeteredDays | null {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return null;
  const length = Math.round(DAY / grid.step);
  const start = Math.max(0, indexAt(grid, from));
  const end = Math.min(grid.length, indexAt(grid, to) + 1);
  const all = Array.from({ length: Math.max(0, Math.floor((end - start) / length)) }, (_, d) =>
    dayOf(record, heatingPower, start + d * length, length, heatLossAsDrawn),
  );
  const stretch = coldest(withSunnyDays(all));
  const used = stretch.filter(({ counts }) => counts);
  if (used.length < FEWEST_DAYS || readOnceADay(heatingPower, used, length)) return null;
  return {
    first: used[0].first,
    last: used[used.length - 1].first + length - 1,
    heat: heatOf(heatingPower, used, length),
    used: used.length,
    leftOut: stretch.length - used.length,
    coldest: stretch.length < all.length,
  };
}

interface Day {
  readonly first: number;
  /** Inside less outside on average [K]. */
  readonly difference: number;
  readonly known: boolean;
  /** It is known, and the metered heat was that of a house. */
  readonly counts: boolean;
}

function dayOf(
  { insideTemperature, outsideTemperature }: HouseRecord,
  heatingPower: Float64Array,
  first: number,
  length: number,
  heatLossAsDrawn: number,
): Day {
  let known = 0;
  let heat = 0;
  let difference = 0;
  for (let k = first; k < first + length; k++) {
    const apart = insideTemperature[k] - outsideTemperature[k];
    if (Number.isNaN(heatingPower[k] + apart)) continue;
    known++;
    heat += heatingPower[k];
    difference += apart;
  }
  return {
    first,
    difference: known === 0 ? 0 : difference / known,
    known: known >= MOSTLY * length,
    counts: known >= MOSTLY * length && difference > 0 && heat > LEAST_SHARE * heatLossAsDrawn * difference,
  };
}

const MOST_SUNNY = 2;

/** Little heat for a day or two between days that count is the sun's doing, not another stove's. */
function withSunnyDays(days: readonly Day[]): Day[] {
  return days.map((day, d) => {
    const before = days.findLastIndex(({ counts }, k) => k < d && counts);
    const after = days.findIndex(({ counts }, k) => k > d && counts);
    const sunny = day.known && before >= 0 && after >= 0 && after - before - 1 <= MOST_SUNNY;
    return sunny ? { ...day, counts: true } : day;
  });
}

function coldest(days: readonly Day[]): readonly Day[] {
  const worth = (stretch: readonly Day[]) =>
    stretch.reduce((sum, { counts, difference }) => sum + (counts ? difference : 0), 0);
  const stretches = Array.from({ length: Math.max(1, days.length - MOST_DAYS + 1) }, (_, k) =>
    days.slice(k, k + MOST_DAYS),
  );
  return stretches.reduce((best, it) => (worth(it) > worth(best) ? it : best));
}

/** A change by less of the mean is noise, or the rounding of a counter [–]. */
const CHANGE = 0.01;

/** Heat that changes about once a day is a counter's daily reading: what it did meanwhile nobody knows. */
function readOnceADay(heatingPower: Float64Array, days: readonly Day[], length: number): boolean {
  const known = days.map(({ first }) => heatingPower.subarray(first, first + length));
  const mean =
    known.reduce((sum, day) => sum + day.reduce((all, it) => all + (it || 0), 0), 0) / (days.length * length);
  let changes = 0;
  for (const day of known)
    for (let k = 1; k < day.length; k++)
      if (Math.abs(day[k] - day[k - 1]) > CHANGE * mean) {
        changes++;
        k++; // a change within a cell shows on both its sides
      }
  const perDay = changes / days.length;
  return perDay > 0.5 && perDay < 1.5;
}

function heatOf(heatingPower: Float64Array, days: readonly Day[], length: number): Float64Array {
  const heat = new Float64Array(heatingPower.length).fill(Number.NaN);
  for (const { first } of days) heat.set(heatingPower.subarray(first, first + length), first);
  return heat;
}
