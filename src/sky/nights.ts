/** The nights of a record. */
import type { Place } from './place.ts';
import { sunTimesNear } from './sunTimes.ts';
import { localDate } from './zone.ts';

/** Instants in [s]; noon < sunset < sunrise. */
export interface Night {
  /** The evening's local date, "YYYY-MM-DD": that of the noon before it. */
  readonly date: string;
  /** When the sun stood highest before the night. */
  readonly noon: number;
  readonly sunset: number;
  readonly sunrise: number;
}

const DAY = 86_400; // [s]

/**
 * Every night, from sunset to sunrise, that has at least an instant in common with the record, in the order
 * of time. Where the sun does not set, or does not rise again the next day, there is no night.
 *
 * @param first the record's first instant [s]
 * @param last  its last [s]
 */
export function nightsBetween(first: number, last: number, place: Place): Night[] {
  const nights: Night[] = [];
  // a night lies between two noons, so none of an earlier day reaches the record
  let today = sunTimesNear(first - DAY, place);
  while (today.noon <= last) {
    const tomorrow = sunTimesNear(today.noon + DAY, place);
    const { noon, sunset } = today;
    const { sunrise } = tomorrow;
    if (sunset !== null && sunrise !== null && sunset <= last && sunrise >= first)
      nights.push({ date: localDate(noon, place.timeZone), noon, sunset, sunrise });
    today = tomorrow;
  }
  return nights;
}
