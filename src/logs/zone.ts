/** The rules of a time zone as a table, so that half a million rows need not ask the calendar one by one. */
import { Temporal } from 'temporal-polyfill';

/** Spans of unchanging offset, in order; they meet in UTC, and gape or overlap on the local clock. */
export interface Zone {
  /** Offset from UTC in each span [s]; length n. */
  readonly offset: Float64Array;
  /** First and last local second of each span, as if they were UTC [s since 1970], the last excluded; length n. */
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/**
 * The spans of a zone that touch the local times from `first` to `last` [s since 1970, as if UTC].
 *
 * @throws RangeError if there is no such zone
 */
export function zoneBetween(timeZone: string, first: number, last: number): Zone {
  const offset: number[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const begin = Temporal.Instant.fromEpochMilliseconds(Math.floor(first - 2 * DAY) * 1000);
  let at = begin.toZonedDateTimeISO(timeZone);
  for (;;) {
    const next = at.getTimeZoneTransition('next');
    const here = at.offsetNanoseconds / 1e9;
    offset.push(here);
    from.push(offset.length === 1 ? Number.NEGATIVE_INFINITY : at.epochMilliseconds / 1000 + here);
    to.push(next === null ? Number.POSITIVE_INFINITY : next.epochMilliseconds / 1000 + here);
    if (next === null || next.epochMilliseconds / 1000 > last + 2 * DAY) break;
    at = next;
  }
  return { offset: Float64Array.from(offset), from: Float64Array.from(from), to: Float64Array.from(to) };
}

/** A local time on the world's clock: once as a rule, never in a spring gap, twice in an autumn overlap. */
export interface Instants {
  readonly count: 0 | 1 | 2;
  /** The earlier instant [s since 1970 UTC]; NaN when there is none. */
  readonly first: number;
  /** The later one; NaN unless the local time occurs twice. */
  readonly second: number;
  /** Which change of the clock makes it double; equal for all local times of one overlap. */
  readonly span: number;
}

/** The instants of a local time [s since 1970, as if UTC] that lies within the table. */
export function instantsOf(zone: Zone, local: number): Instants {
  const { offset, from, to } = zone;
  let span = 0;
  let high = to.length - 1;
  while (span < high) {
    const middle = (span + high) >> 1;
    if (to[middle] > local) high = middle;
    else span = middle + 1;
  }
  if (from[span] > local) return { count: 0, first: Number.NaN, second: Number.NaN, span };
  const first = local - offset[span];
  const later = span + 1 < from.length && from[span + 1] <= local;
  if (!later) return { count: 1, first, second: Number.NaN, span };
  return { count: 2, first, second: local - offset[span + 1], span };
}

/** Local times [s] that occur once and have one offset [s]: half a million rows need not be looked up one by one. */
export interface PlainSpan {
  readonly from: number;
  readonly to: number;
  readonly offset: number;
}

/** The plain part of a span of the table. */
export function plainSpanAt({ offset, from, to }: Zone, span: number): PlainSpan {
  const before = span > 0 ? to[span - 1] : Number.NEGATIVE_INFINITY;
  const after = span + 1 < from.length ? from[span + 1] : Number.POSITIVE_INFINITY;
  return { from: Math.max(from[span], before), to: Math.min(to[span], after), offset: offset[span] };
}

const DAY = 86400;
