/** Where in a night the shell cools freely: after heat and sun have left, before morning warms it again. */
import { type Grid, indexAt, timeAt } from '../series/grid.ts';
import type { Night } from '../sky/nights.ts';
import { suddenFalls } from './suddenFall.ts';

/** Cells of the grid, both ends included. */
export interface CoolingWindow {
  readonly first: number;
  readonly last: number;
}

/**
 * Air and linings give up an evening's heat within this time; before, the fall is theirs and not the shell's [s].
 * Waiting 0.2 h only is clearly worse, 2.5 to 3.5 h no better (prototype on simulated houses).
 */
const SETTLING = 1.5 * 3600;
/** The last readings before the lowest point already feel the morning [s]. */
const BEFORE_LOWEST = 600;
/** What is opened within so long of the window's end ends it [s]: the hours before it are good. */
const LAST_HOUR = 3600;
/** A rise of more than this means that heat came in: a thermostat's swing, a heater, people [K]. */
const HEAT_CAME_IN = 0.2;
/** Still at the peak: within this of it [K]. */
const AT_PEAK = 0.1;

/**
 * The cooling window of a night: from the last instant at the last peak (after which the temperature only falls),
 * or from where the heating plainly went off after it, plus 1.5 h, and not before sunset; to the lowest point of the
 * later half of the night less ten minutes, or where something is opened in its last hour. A logger coarser than 0.1 K widens both tolerances.
 *
 * @param inside     temperature on the grid [°C], NaN where missing
 * @param resolution smallest step of the readings [K]
 * @returns null when the night has no reading or the window is empty
 */
export function coolingWindow(
  grid: Grid,
  inside: Float64Array,
  night: Night,
  resolution: number,
): CoolingWindow | null {
  const lowest = lowestOf(grid, inside, night);
  if (lowest === null) return null;
  const noon = Math.max(0, indexAt(grid, night.noon));
  const peak = lastPeak(inside, noon, lowest, Math.max(HEAT_CAME_IN, 2 * resolution));
  let leave = lowest;
  while (leave > peak && !(inside[leave] >= inside[peak] - Math.max(AT_PEAK, resolution))) leave--;
  let last = lowest - Math.round(BEFORE_LOWEST / grid.step);
  const lastHour = last - Math.round(LAST_HOUR / grid.step);
  for (const { at, whileCooling } of suddenFalls(grid, inside, night, resolution)) {
    if (!whileCooling && at > leave && at < lowest) leave = at;
    if (whileCooling && at >= lastHour) last = Math.min(last, at);
  }
  const start = Math.max(timeAt(grid, leave) + SETTLING, night.sunset);
  const first = Math.max(0, Math.ceil((start - grid.start) / grid.step));
  return last > first ? { first, last } : null;
}

/** The last of the lowest cells between the middle of the night and sunrise; null when none has a reading. */
function lowestOf(grid: Grid, inside: Float64Array, { sunset, sunrise }: Night): number | null {
  const from = Math.max(0, indexAt(grid, (sunset + sunrise) / 2));
  const to = Math.min(grid.length - 1, Math.floor((sunrise - grid.start) / grid.step));
  let lowest: number | null = null;
  for (let i = from; i <= to; i++)
    if (inside[i] <= (lowest === null ? Number.POSITIVE_INFINITY : inside[lowest])) lowest = i;
  return lowest;
}

/** Walking back from the lowest cell, the warmest one before which heat came in. */
function lastPeak(inside: Float64Array, noon: number, lowest: number, heatCameIn: number): number {
  let peak = lowest;
  for (let i = lowest; i >= noon; i--) {
    if (inside[i] > inside[peak]) peak = i;
    if (inside[i] < inside[peak] - heatCameIn) break;
  }
  return peak;
}
