/** When the sun rises and sets. */
import { getTimes } from 'suncalc';
import type { Place } from './place.ts';
import { instantOf } from './zone.ts';

/** Instants [s]; null where the sun does not cross the horizon that day. */
export interface SunTimes {
  readonly sunrise: number | null;
  /** When the sun stands highest. */
  readonly noon: number;
  readonly sunset: number | null;
}

/**
 * Sunrise, noon and sunset of a local date: of the solar day whose noon is nearest to 12:00 by the clock.
 *
 * @param date "YYYY-MM-DD"
 */
export function sunTimes(date: string, place: Place): SunTimes {
  return sunTimesNear(instantOf(`${date}T12:00`, place.timeZone), place);
}

/**
 * Sunrise, noon and sunset of the solar day whose noon is nearest to an instant [s]. The sun rises and sets
 * when its centre is 50′ below the horizon (its radius and the usual refraction), seen from sea level.
 *
 * @see Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 15 and 25, as suncalc computes it
 */
export function sunTimesNear(instant: number, place: Pick<Place, 'latitude' | 'longitude'>): SunTimes {
  const { sunrise, solarNoon, sunset } = getTimes(new Date(instant * 1000), place.latitude, place.longitude);
  return { sunrise: seconds(sunrise), noon: solarNoon.getTime() / 1000, sunset: seconds(sunset) };
}

const seconds = (date: Date | null) => (date === null ? null : date.getTime() / 1000);
