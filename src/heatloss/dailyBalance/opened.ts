/** When the air fell as a thermostat never lets it fall: a window or a door was opened. */
import { quantileSorted } from 'simple-statistics';
import type { JudgedNight } from '../../cooling/index.ts';
import { type Grid, timeAt } from '../../series/grid.ts';

/** Air alone turns the curve within this [s]; linings and structure are slower. */
const SUDDEN = 1200;
/** Less could be a heater that goes off [K]. PRACTICE. */
const LEAST_FALL = 1;
/**
 * So many times the fall that all but a fiftieth of the record stays below: heaters that go on and off make the air
 * saw all day. Of the 600 metered days of the tuning seeds 100 to 103, in which nobody opens a window, none has such
 * a fall.
 */
const BEYOND_USUAL = 2.5;
const USUAL = 0.98;

/**
 * Instants [s] at which something was opened: by the sudden falls of the whole record, and by what was said of nights
 * in which no heater was on.
 *
 * @param inside on the grid [°C], NaN where missing
 */
export function openings(grid: Grid, inside: Float64Array, nights: readonly JudgedNight[]): number[] {
  const span = Math.round(SUDDEN / grid.step);
  const falls = inside.subarray(0, Math.max(0, inside.length - span)).map((it, i) => it - inside[i + span]);
  const known = falls.filter((it) => it > 0).sort();
  const least =
    known.length === 0 ? LEAST_FALL : Math.max(LEAST_FALL, BEYOND_USUAL * quantileSorted([...known], USUAL));
  const sudden = Array.from(falls, (fall, i) => (fall >= least ? [timeAt(grid, i)] : [])).flat();
  const told = nights.flatMap(({ night, heated, reasons }) =>
    heated ? [] : reasons.flatMap((it) => (it.code === 'opened' ? [night.sunrise - it.beforeSunrise] : [])),
  );
  return [...sudden, ...told];
}
