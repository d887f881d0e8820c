/** One day of a house's heat, from its start to the next, or why it does not count. */
import { type Grid, indexAt } from '../../series/grid.ts';

/** Means over one day. */
export interface HeatDay {
  /** Heat put in, less what the house stored and what went to a neighbour [W]. */
  readonly heat: number;
  /** Inside less outside [K]. */
  readonly difference: number;
  /** Global horizontal irradiance [W/m²]; null where none was logged. */
  readonly irradiance: number | null;
}

export interface BalancedDay extends HeatDay {
  /** The sun's heat through the glass as drawn [W]. */
  readonly sun: number;
  /** What went to the neighbour [W]. */
  readonly toNeighbour: number;
}

/** Why a day does not count. */
export type Leaving =
  | 'gap-in-temperatures'
  | 'gap-in-heat'
  | 'gap-in-sun'
  | 'no-heat'
  | 'small-difference'
  | 'opened'
  | 'left-out-by-hand';

/** Everything that a day is made of; all series on the grid, NaN where missing. */
export interface BalanceSeries {
  readonly grid: Grid;
  /** [°C] */
  readonly inside: Float64Array;
  readonly outside: Float64Array;
  /** Of a heated neighbour [°C]; null without one. */
  readonly neighbour: Float64Array | null;
  /** Through walls to it [W/K]. */
  readonly toNeighbour: number;
  /** Metered [W]. */
  readonly power: Float64Array;
  /** Global horizontal [W/m²]; null when it is not to be reckoned with. */
  readonly irradiance: Float64Array | null;
  /** Through the glass as drawn [W]. */
  readonly sun: Float64Array;
  /** [J/K], for the heat that the house stored from start to start; 0 leaves that out. */
  readonly heatCapacity: number;
  /** Heat that is always given off inside [W]. */
  readonly constantGains: number;
  /** Instants at which something was opened [s]. */
  readonly openings: readonly number[];
  /** Nights that were left out by hand; the day that holds one's beginning goes with it [s]. */
  readonly leftOut: readonly number[];
}

const SMALLEST_DIFFERENCE = 3; // [K]
/** Over a day so much may be missing of what changes slowly [s]; of the heat nothing. */
const LONGEST_GAP = 3600;
/** The temperature at a day's start is a mean over so much to either side [s]: one reading is noise. */
const AROUND_START = 1800;

/** @returns null where the day from `from` to `to` [s] reaches beyond the record */
export function heatDay(series: BalanceSeries, from: number, to: number): BalancedDay | Leaving | null {
  const { grid, inside, outside, neighbour, power, irradiance, sun } = series;
  const first = indexAt(grid, from);
  const last = indexAt(grid, to);
  if (first < 0 || last >= grid.length) return null;
  const within = (instant: number) => instant >= from && instant < to;
  const mean = (values: Float64Array) => meanOf(values.subarray(first, last));
  const gap = (values: Float64Array) => missing(values.subarray(first, last)) * grid.step;
  const around = Math.round(AROUND_START / grid.step);
  const at = (k: number) => meanOf(inside.subarray(Math.max(0, k - around), k + around + 1));
  const stored = (series.heatCapacity * (at(last) - at(first))) / (to - from);

  // Heat first: a day without any was never meant for a balance, whatever else is the matter with it.
  if (gap(power) > 0) return 'gap-in-heat';
  const heat = mean(power);
  if (!(heat > 0)) return 'no-heat';
  if (series.leftOut.some(within)) return 'left-out-by-hand';
  const temperatures = neighbour === null ? [inside, outside] : [inside, outside, neighbour];
  if (temperatures.some((it) => gap(it) > LONGEST_GAP) || Number.isNaN(stored)) return 'gap-in-temperatures';
  if (irradiance !== null && gap(irradiance) > LONGEST_GAP) return 'gap-in-sun';
  const difference = mean(inside) - mean(outside);
  if (!(difference >= SMALLEST_DIFFERENCE)) return 'small-difference';
  if (series.openings.some(within)) return 'opened';
  const toNeighbour = neighbour === null ? 0 : series.toNeighbour * (mean(inside) - mean(neighbour));
  return {
    heat: heat + series.constantGains - stored - toNeighbour,
    difference,
    irradiance: irradiance === null ? null : mean(irradiance),
    sun: mean(sun),
    toNeighbour,
  };
}

const missing = (values: Float64Array) => values.reduce((n, it) => n + (Number.isNaN(it) ? 1 : 0), 0);

function meanOf(values: Float64Array): number {
  const known = values.filter((it) => !Number.isNaN(it));
  return known.reduce((sum, it) => sum + it, 0) / known.length;
}
