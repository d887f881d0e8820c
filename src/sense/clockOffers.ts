/** From what a clock is off by to the answers in `house.json` that would mend it. */
import { Temporal } from 'temporal-polyfill';
import type { Place } from '../sky/place.ts';
import type { ClockError, Offer } from './finding.ts';
import type { ReadClock } from './sensed.ts';

const HOUR = 3600;
/** [s] Less than this between the nearest end of an interval and no correction at all is not asked about. */
const LEAST_CLEARANCE = 600;

/** What the zone's clock is ahead of UTC at an instant [s]. */
export function zoneOffset(instant: number, timeZone: string): number {
  return zoned(instant, timeZone).offsetNanoseconds / 1e9;
}

/** The record cut at the changes of the zone's clock [s]. */
export function betweenClockChanges(
  from: number,
  to: number,
  timeZone: string,
): { from: number; to: number }[] {
  const next = zoned(from, timeZone).getTimeZoneTransition('next');
  const change = next === null ? Number.POSITIVE_INFINITY : next.epochMilliseconds / 1000;
  if (change >= to) return [{ from, to }];
  return [{ from, to: change }, ...betweenClockChanges(change, to, timeZone)];
}

/** Whether the clock is off beyond doubt in some part of the record. */
export const isOff = ({ low, high }: ClockError) => low > LEAST_CLEARANCE || high < -LEAST_CLEARANCE;

/**
 * A zone whose clock explains every part of the record, the house's own and UTC before clocks that keep
 * standard or summer time all year; else, or beside it, one correction for all parts.
 */
export function clockOffers(parts: readonly ClockError[], read: ReadClock, place: Place): Offer[] {
  const readZone = read.timeZone ?? place.timeZone;
  const already = read.clockOffset ?? 0;
  const fixed = parts.map(({ from }) => zoneOffset(from, place.timeZone) / HOUR).filter(Number.isInteger);
  const candidates = [
    place.timeZone,
    'UTC',
    ...fixed
      .filter((hours) => hours !== 0)
      .map((hours) => `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`),
  ];
  const explains = (zone: string) =>
    parts.every(({ from, to, low, high }) => {
      const middle = (from + to) / 2;
      const correction = zoneOffset(middle, readZone) - zoneOffset(middle, zone);
      return low <= correction && correction <= high;
    });
  const zone = already === 0 ? candidates.find(explains) : undefined;
  const low = Math.max(...parts.map((part) => part.low));
  const high = Math.min(...parts.map((part) => part.high));
  const mean = parts.reduce((sum, { correction }) => sum + correction, 0) / parts.length;
  return [
    ...(zone === undefined ? [] : [{ timeZone: zone }]),
    ...(low > high ? [] : [{ clockOffsetMin: Math.round((already + likeliest(mean, low, high)) / 60) }]),
  ];
}

/** Clocks are mostly off by whole hours: such a one where the interval has it. */
function likeliest(value: number, low: number, high: number): number {
  const whole = Math.round(value / HOUR) * HOUR;
  return whole >= low && whole <= high ? whole : value;
}

const zoned = (instant: number, timeZone: string) =>
  Temporal.Instant.fromEpochMilliseconds(Math.round(instant * 1000)).toZonedDateTimeISO(timeZone);
