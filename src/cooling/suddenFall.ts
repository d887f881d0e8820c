/** Where the inside temperature suddenly turns down: the heating goes off, or a window, door or hatch opens. */
import { median } from 'simple-statistics';
import { linearLeastSquares } from '../maths/leastSquares.ts';
import { type Grid, indexAt } from '../series/grid.ts';
import type { Night } from '../sky/nights.ts';

export interface SuddenFall {
  /** The last cell before it. */
  readonly at: number;
  /** Within the next 20 minutes [K]. */
  readonly fall: number;
  /** Out of a fall that was under way, as when something is opened; else out of warmth that was kept up. */
  readonly whileCooling: boolean;
}

/** Air alone turns the curve within this [s]; linings and structure are slower. */
const SUDDEN = 1200;
/** So much before tells whether heat was still coming in [s]; the shortest that is believed. */
const BEFORE = 2 * 3600;
const SHORTEST_BEFORE = 3600;
/** Below this it could be noise [K], or three steps of a coarser logger. */
const LEAST_FALL = 0.3;
/** So many times the night's usual fall, and so many times the fall just before. */
const STEEPER = 3;
/** A thermostat may sag by this [K/h]. */
const SAG = 0.05;
/** A body left alone is this far below its peak and falls as fast as this share of the night's usual fall, */
const BELOW_PEAK = 0.3; // [K]
const SHARE_OF_USUAL = 0.6;
/** or is so far below [K]. */
const FAR_BELOW_PEAK = 0.5;

/**
 * Every sudden fall between sunset and sunrise, from the inside series alone. A new one is looked for once the one
 * before has had the time of `BEFORE` to calm down.
 *
 * @param inside     temperature on the grid [°C], NaN where missing
 * @param resolution smallest step of the readings [K]
 */
export function suddenFalls(
  grid: Grid,
  inside: Float64Array,
  { sunset, sunrise }: Night,
  resolution: number,
): SuddenFall[] {
  const from = Math.max(0, indexAt(grid, sunset));
  const to = Math.min(grid.length - 1, indexAt(grid, sunrise));
  const span = Math.round(SUDDEN / grid.step);
  const fallAt = (i: number) => inside[i] - inside[i + span];
  const all = Array.from({ length: Math.max(0, to - span - from + 1) }, (_, k) => fallAt(from + k));
  const known = all.filter((it) => !Number.isNaN(it));
  if (known.length === 0) return [];
  const usual = median(known);
  const least = Math.max(LEAST_FALL, 3 * resolution, STEEPER * usual);

  const found: SuddenFall[] = [];
  let after = from;
  let peak = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to - span; i++) {
    if (inside[i] > peak) peak = inside[i];
    if (i < after || !(fallAt(i) >= least)) continue;
    const before = rateBefore(grid, inside, i);
    if (before === null || fallAt(i) < STEEPER * before.rate * SUDDEN) continue;
    const falling = before.rate > Math.max(SAG / 3600, 3 * before.se);
    const belowPeak = peak - inside[i];
    const asUsual = before.rate > (SHARE_OF_USUAL * usual) / SUDDEN;
    const free = belowPeak > (asUsual ? BELOW_PEAK : FAR_BELOW_PEAK);
    found.push({ at: i, fall: fallAt(i), whileCooling: falling && free });
    after = i + Math.round(BEFORE / grid.step);
  }
  return found;
}

/** How fast it fell until a cell, which may already be in the fall, by a straight line [K/s]; null without readings. */
function rateBefore(grid: Grid, inside: Float64Array, at: number): { rate: number; se: number } | null {
  const first = Math.max(0, at - Math.round(BEFORE / grid.step));
  const cells = Array.from({ length: at - first }, (_, k) => first + k).filter(
    (i) => !Number.isNaN(inside[i]),
  );
  if (cells.length < SHORTEST_BEFORE / grid.step) return null;
  const line = linearLeastSquares(
    cells.map((i) => [1, (i - at) * grid.step]),
    cells.map((i) => inside[i]),
  );
  if (line.kind === 'not fitted') return null;
  return { rate: -line.coefficients[1], se: Math.sqrt(line.covariance[1][1]) };
}
