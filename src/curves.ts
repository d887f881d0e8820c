/** The evidence of each night as lines to draw: what the pages and the sheet show of a night. */
import type { Evidence } from './assess.ts';
import type { JudgedNight } from './cooling/index.ts';
import type { ForetoldNight } from './heatloss/index.ts';
import { type MoistMean, moistMeans } from './record/moistMeans.ts';
import { indexAt, timeAt, timesBetween } from './series/grid.ts';

/** One night from an hour before sunset to an hour after sunrise, on the grid; null where there is no reading. */
export interface NightCurve {
  /** The evening's date. */
  readonly date: string;
  /** Instants [s]. */
  readonly sunset: number;
  readonly sunrise: number;
  readonly time: readonly number[];
  /** [°C] */
  readonly inside: readonly (number | null)[];
  readonly outside: readonly (number | null)[];
  /** The fitted fall within its window [°C]. */
  readonly fitted: readonly (number | null)[];
  /** Instants between which the fall was fitted [s]; null without a window. */
  readonly window: { readonly from: number; readonly to: number } | null;
  /** What the house as drawn would have done within that window [°C]; left out where nobody can tell. */
  readonly foretold?: Foretold;
  /** The air by each logger with humidity; left out where none has any of this night. */
  readonly moist?: readonly MoistMean[];
}

/** The likeliest course and the bounds of its 95 % interval, for each time; null outside the window. */
export interface Foretold {
  readonly value: readonly (number | null)[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

const MARGIN = 3600; // [s]

/** The curves of all nights, in their order. */
export const nightCurves = (evidence: Evidence): NightCurve[] =>
  evidence.nights.map((night) => nightCurve(evidence, night));

function nightCurve({ record, foretold }: Evidence, { night, window, fit }: JudgedNight): NightCurve {
  const { grid } = record;
  const first = Math.max(0, indexAt(grid, night.sunset - MARGIN));
  const last = Math.min(grid.length - 1, indexAt(grid, night.sunrise + MARGIN));
  const cells = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  const shown = (value: number) => (Number.isFinite(value) ? Math.round(value * 1000) / 1000 : null);
  const fittedAt = (cell: number) =>
    window === null || fit?.kind !== 'fitted' || cell < window.first || cell > window.last
      ? Number.NaN
      : fit.curve[cell - window.first];
  const drawn = foretold.find(({ date }) => date === night.date);
  const moist = moistMeans(record, night.sunset, night.sunrise);
  return {
    date: night.date,
    sunset: night.sunset,
    sunrise: night.sunrise,
    time: cells.length > 0 ? Array.from(timesBetween(grid, first, last)) : [],
    inside: cells.map((cell) => shown(record.insideTemperature[cell])),
    outside: cells.map((cell) => shown(record.outsideTemperature[cell])),
    fitted: cells.map((cell) => shown(fittedAt(cell))),
    window: window && { from: timeAt(grid, window.first), to: timeAt(grid, window.last) },
    ...(drawn !== undefined && { foretold: foretoldAt(cells, drawn, shown) }),
    ...(moist.length > 0 && { moist }),
  };
}

function foretoldAt(
  cells: readonly number[],
  { first, temperature, coolest, warmest }: ForetoldNight,
  shown: (value: number) => number | null,
): Foretold {
  const over = (series: Float64Array) => cells.map((cell) => shown(series[cell - first]));
  return { value: over(temperature), low: over(coolest), high: over(warmest) };
}
