/** Signs that something warmed the house while it should have cooled freely. */
import { median } from 'simple-statistics';
import { indexAt, timeAt } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { Night } from '../sky/nights.ts';
import type { NightReason } from './reasons.ts';
import { risesOf } from './rises.ts';
import type { CoolingWindow } from './window.ts';

/** A rise of less could be noise [K], or 2.5 steps of a coarser logger. */
const LEAST_RISE = 0.08;
/** Once or twice is wind or somebody; a thermostat comes back. */
const FEWEST_CYCLES = 3;
/** A room rises by this only with heat of its own [K], within so long [s]. */
const ROOM_WARMED = 0.5;
const ROOM_WITHIN = 2 * 3600;
/** The sun by night [W/m²], above any offset of a pyranometer and any twilight. */
const SUNNY = 50;

/**
 * Heating that came on again and again: within the window, or, where there was next to none, in the later half of
 * the night, which is then why.
 */
export function heatingCycled(
  { grid, insideTemperature, insideResolution }: HouseRecord,
  { sunset, sunrise }: Night,
  window: CoolingWindow | null,
): NightReason[] {
  const first = window?.first ?? indexAt(grid, (sunset + sunrise) / 2);
  const last = window?.last ?? indexAt(grid, sunrise);
  const rises = risesOf(insideTemperature, first, last, Math.max(LEAST_RISE, 2.5 * insideResolution));
  if (rises.length < FEWEST_CYCLES) return [];
  return [{ code: 'heating-cycled', times: rises.length, swing: median(rises.map(({ size }) => size)) }];
}

/** What made a fall uneven: that it rose within the window, if it did. */
export function heatCameIn(
  { grid, insideTemperature, insideResolution }: HouseRecord,
  { sunrise }: Night,
  { first, last }: CoolingWindow,
): NightReason[] {
  const least = Math.max(LEAST_RISE, 2.5 * insideResolution);
  const [largest] = risesOf(insideTemperature, first, last, least).toSorted((a, b) => b.size - a.size);
  if (largest === undefined) return [];
  return [{ code: 'heat-came-in', rise: largest.size, beforeSunrise: sunrise - timeAt(grid, largest.at) }];
}

/** A room that warmed within the window while the house cooled: a heater, people or a lamp at its logger. */
export function roomWarmed({ grid, rooms }: HouseRecord, { first, last }: CoolingWindow): NightReason[] {
  const within = Math.round(ROOM_WITHIN / grid.step);
  return rooms
    .filter(({ place }) => place === 'inside')
    .flatMap(({ room, temperature }): NightReason[] => {
      let rise = 0;
      for (let i = first; i <= last; i++)
        for (let k = i + 1; k <= Math.min(last, i + within); k++)
          rise = Math.max(rise, temperature[k] - temperature[i] || 0);
      return rise > ROOM_WARMED ? [{ code: 'room-warmed', room, rise }] : [];
    });
}

/** The sun shone within the window for an hour, by the weather record: a clock runs wrong. */
export function sunStillOn({ grid, irradiance }: HouseRecord, { first, last }: CoolingWindow): NightReason[] {
  if (irradiance === null) return [];
  const hour = Math.round(3600 / grid.step);
  let strongest = 0;
  for (let i = first; i + hour - 1 <= last; i++) {
    const least = Math.min(...irradiance.subarray(i, i + hour));
    if (least > strongest) strongest = least;
  }
  return strongest > SUNNY ? [{ code: 'sun-still-on', irradiance: strongest }] : [];
}
