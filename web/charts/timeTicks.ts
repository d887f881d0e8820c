/**
 * Where a time axis is marked, and with what: round times of the house's own clock, also across a clock
 * change (the doubled hour is marked twice, the missing one not at all).
 */
import { clock, clockOffset, dayMonth } from '../../src/sheet/drawing/clock.ts';

export interface TimeTick {
  /** [s] */
  readonly at: number;
  /** One line, or two: the date stands under a midnight and under the first mark. */
  readonly label: string;
}

const MINUTE = 60;
const HOUR = 3600;
const DAY = 24 * HOUR;
const steps = [
  ...[1, 5, 15, 30].map((n) => n * MINUTE),
  ...[1, 2, 3, 6, 12].map((n) => n * HOUR),
  ...[1, 2, 7, 14].map((n) => n * DAY),
];
/** The first Monday of 1970: weeks are marked at their Mondays. */
const FIRST_MONDAY = 4 * DAY;
const TICK_WIDTH = 48; // [px], room for "12 Feb" and some air

/** @param from,to [s]  @param width of the axis [px] */
export function timeTicks(from: number, to: number, width: number, timeZone: string): TimeTick[] {
  const most = Math.max(1, width / TICK_WIDTH);
  const step = steps.find((it) => (to - from) / it <= most);
  const offsets = offsetsWithin(from, to, timeZone);
  if (step === undefined) return monthTicks(from, to, most, offsets, timeZone);
  const ticks = instantsOf(everyStep(from, to, step, offsets), from, to, offsets, timeZone);
  return ticks.map((at, i) => ({ at, label: labelOf(at, step, i === 0, timeZone) }));
}

function labelOf(at: number, step: number, first: boolean, timeZone: string): string {
  if (step >= DAY) return dayMonth(at, timeZone);
  const time = clock(at, timeZone);
  return first || time === '00:00' ? `${time}\n${dayMonth(at, timeZone)}` : time;
}

/** Local times, as seconds of a clock that knows no changes. */
function everyStep(from: number, to: number, step: number, offsets: readonly number[]): number[] {
  const origin = step >= 7 * DAY ? FIRST_MONDAY : 0;
  const first = Math.ceil((from + Math.min(...offsets) - origin) / step);
  const last = Math.floor((to + Math.max(...offsets) - origin) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => origin + (first + i) * step);
}

/** Every instant at which the house's clock shows one of these local times. */
const instantsOf = (
  locals: readonly number[],
  from: number,
  to: number,
  offsets: readonly number[],
  timeZone: string,
): number[] =>
  locals
    .flatMap((local) => offsets.map((offset) => ({ at: local - offset, offset })))
    .filter(({ at, offset }) => at >= from && at <= to && clockOffset(at, timeZone) === offset)
    .map(({ at }) => at)
    .toSorted((a, b) => a - b);

/** No zone keeps an offset for less than some weeks: a look every ten days finds them all. */
function offsetsWithin(from: number, to: number, timeZone: string): number[] {
  const looks = Math.ceil((to - from) / (10 * DAY));
  const at = Array.from({ length: looks }, (_, i) => from + i * 10 * DAY);
  return [...new Set([...at, to].map((instant) => clockOffset(instant, timeZone)))];
}

function monthTicks(
  from: number,
  to: number,
  most: number,
  offsets: readonly number[],
  timeZone: string,
): TimeTick[] {
  const start = new Date(from * 1000);
  const months = Math.ceil((to - from) / (28 * DAY)) + 2;
  const every = [1, 2, 3, 6, 12].find((n) => months / n <= most) ?? 12 * Math.ceil(months / 12 / most);
  const locals = Array.from({ length: months }, (_, i) =>
    Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + i, 1),
  )
    .filter((local) => monthNumber(local) % every === 0)
    .map((local) => local / 1000);
  return instantsOf(locals, from, to, offsets, timeZone).map((at, i) => {
    const [, month] = dayMonth(at, timeZone).split(' ');
    const year = new Date((at + DAY) * 1000).getUTCFullYear();
    return { at, label: i === 0 || month === 'Jan' ? `${month}\n${year}` : month };
  });
}

const monthNumber = (milliseconds: number) => {
  const date = new Date(milliseconds);
  return date.getUTCFullYear() * 12 + date.getUTCMonth();
};
