/** Where the sun stands. */
import { getPosition } from 'suncalc';
import type { Place } from './place.ts';

export interface SunPosition {
  /** Above the horizon as seen, that is with the refraction of an average atmosphere [rad]. */
  readonly elevation: number;
  /** From north, clockwise [rad, 0 to 2π]. */
  readonly azimuth: number;
}

/**
 * The sun's place in the sky at an instant [s].
 *
 * @see Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 25 and 16.4, as suncalc computes it
 */
export function sunPosition(instant: number, place: Pick<Place, 'latitude' | 'longitude'>): SunPosition {
  const { altitude, azimuth } = getPosition(new Date(instant * 1000), place.latitude, place.longitude);
  return { elevation: radians(altitude), azimuth: radians(azimuth) };
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;
