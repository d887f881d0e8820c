/** Between instants [s] and the local times of house.json and of a date field, "2027-02-12T21:40". */
import { clockOffset } from '../../src/sheet/drawing/clock.ts';

/** To the minute. */
export const localTimeOf = (instant: number, timeZone: string): string =>
  new Date((instant + clockOffset(instant, timeZone)) * 1000).toISOString().slice(0, 16);

/** ISO 8601 with the house's offset: "2027-02-12T21:40:00+00:00". */
export function isoTimeOf(instant: number, timeZone: string): string {
  const offset = clockOffset(instant, timeZone);
  const local = new Date((Math.round(instant) + offset) * 1000).toISOString().slice(0, 19);
  const minutes = Math.round(Math.abs(offset) / 60);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** A date alone is its midnight; a doubled time is the first of the two. Null when it is no time. */
export function instantOfLocal(local: string, timeZone: string): number | null {
  const asIfUtc = Date.parse(`${local.length === 10 ? `${local}T00:00` : local}Z`) / 1000;
  if (!Number.isFinite(asIfUtc)) return null;
  // Around a clock change the offset is one of those of half a day before and after.
  const offsets = [-43_200, 43_200].map((by) => clockOffset(asIfUtc + by, timeZone));
  const fitting = offsets
    .map((offset) => asIfUtc - offset)
    .filter((instant) => instant + clockOffset(instant, timeZone) === asIfUtc);
  // A time that the spring change leaves out counts on from before it.
  return fitting.length === 0 ? asIfUtc - offsets[0] : Math.min(...fitting);
}
