/** Between instants [s since 1970 UTC] and the clock on the wall. */
import { Temporal } from 'temporal-polyfill';

/** The local date at an instant, "YYYY-MM-DD". */
export function localDate(instant: number, timeZone: string): string {
  return inZone(instant, timeZone).toPlainDate().toString();
}

/** ISO 8601 with the zone's offset, to the nearest second: "2027-01-09T21:00:00+00:00". */
export function isoWithOffset(instant: number, timeZone: string): string {
  return inZone(Math.round(instant), timeZone).toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/**
 * The instant [s] of a local time. A doubled time is the first of the two; a time that the spring change
 * leaves out counts on past the change ("compatible", RFC 5545 3.3.5).
 *
 * @param local "YYYY-MM-DD" (its midnight) or "YYYY-MM-DDThh:mm" with or without ":ss"
 * @throws RangeError when it is no such time
 */
export function instantOf(local: string, timeZone: string): number {
  const zoned = Temporal.PlainDateTime.from(local).toZonedDateTime(timeZone, {
    disambiguation: 'compatible',
  });
  return zoned.epochMilliseconds / 1000;
}

/** The date after a date, "YYYY-MM-DD". */
export const dayAfter = (date: string): string => Temporal.PlainDate.from(date).add({ days: 1 }).toString();

function inZone(instant: number, timeZone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(Math.round(instant * 1000)).toZonedDateTimeISO(timeZone);
}
