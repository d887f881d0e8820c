/** The clock of a file: the time of every row as the logger showed it, day and month told apart. */
import { type DateOrder, dateOrderOf, dayOf, midnight, type OpenDate } from './dateOrder.ts';
import { wouldRunOnTurned } from './flippedDates.ts';
import { type Stamps, shapeCode } from './stamps.ts';
import type { UnderstoodClock } from './understood.ts';

export interface Clock {
  /** What the clock showed, counted as if it were UTC [s since 1970]; NaN for a row without a time. */
  readonly shown: Float64Array;
  /** Offset from UTC [s] that the row states; NaN where it states none. */
  readonly offset: Float64Array;
  /** Null where the text leaves nothing open. */
  readonly order: DateOrder | null;
  readonly orderBy: UnderstoodClock['orderBy'];
  /** The order of day and month that was taken without evidence; null when nothing was left open. */
  readonly orderGuessed: 'day-first' | 'month-first' | null;
  /** Rows whose date contradicts the order taken: turned, the record would run on. */
  readonly turned: readonly number[];
}

/**
 * Reads the time of every row.
 *
 * @param headerOffset  offset from UTC that header or preamble state for rows that state none [s]; null when silent
 * @param dateOrder     what the house says of day and month; it goes before the evidence
 * @param orderOfOthers what the house's other files have for certain; it decides where this one leaves it open
 */
export function readClock(
  stamps: Stamps,
  headerOffset: number | null,
  dateOrder: DateOrder | undefined,
  orderOfOthers: DateOrder | undefined,
): Clock {
  const { count, clock, offset: stated } = stamps;
  const { dates, dateAt } = datesOf(stamps);
  const open = dates.filter(({ shape }) => shape === YEAR_LAST || shape === OPEN);
  const { order, by } = decided(open, dateOrder, orderOfOthers);
  const midnights = dates.map((date) => midnightOf(date, order ?? 'day-first'));
  const shown = new Float64Array(count);
  for (let i = 0; i < count; i++) shown[i] = dateAt[i] < 0 ? Number.NaN : midnights[dateAt[i]] + clock[i];
  const offset = headerOffset === null ? stated : stated.map((it) => (Number.isNaN(it) ? headerOffset : it));
  const guessed = order === 'month-first' ? order : 'day-first';
  const waysOf = dates.map((date, i) => ({
    taken: midnights[i],
    turned: turnedOf(date, order, midnights[i]),
  }));
  const turned = wouldRunOnTurned(waysOf, dateAt)
    ? [...dateAt.keys()].filter((i) => dateAt[i] >= 0 && waysOf[dateAt[i]].taken !== waysOf[dateAt[i]].turned)
    : [];
  return { shown, offset, order, orderBy: by, orderGuessed: by === 'a guess' ? guessed : null, turned };
}

const YEAR_FIRST = shapeCode('year first');
const DAY_FIRST = shapeCode('day first');
const YEAR_LAST = shapeCode('year last');
const OPEN = shapeCode('open');

/** A date of the file, as it is written, and the rows that have it. */
interface DateSeen extends OpenDate {
  readonly shape: number;
}

/** Each date once, and for each row the place of its own; -1 for a row without a time. */
function datesOf({ count, shape, parts, clock }: Stamps) {
  const places = new Map<number, number>();
  const dates: { -readonly [K in keyof DateSeen]: DateSeen[K] }[] = [];
  const dateAt = new Int32Array(count).fill(-1);
  let last = Number.NaN;
  let place = -1;
  for (let i = 0; i < count; i++) {
    if (shape[i] === 0) continue;
    const [first, second, third] = [parts[3 * i], parts[3 * i + 1], parts[3 * i + 2]];
    // no part is above 9999, no code above 4
    const key = ((first * 10000 + second) * 10000 + third) * 8 + shape[i];
    if (key !== last) {
      last = key;
      place = places.get(key) ?? -1;
    }
    if (place < 0) {
      place = dates.length;
      places.set(key, place);
      const yearOpen = shape[i] === OPEN;
      const none = { earliest: Number.POSITIVE_INFINITY, latest: Number.NEGATIVE_INFINITY };
      dates.push({ shape: shape[i], parts: [first, second, third], yearOpen, rows: 0, ...none });
    }
    const date = dates[place];
    date.rows++;
    if (clock[i] < date.earliest) date.earliest = clock[i];
    if (clock[i] > date.latest) date.latest = clock[i];
    dateAt[i] = place;
  }
  return { dates, dateAt };
}

function midnightOf(date: DateSeen, order: DateOrder): number {
  const [first, second, third] = date.parts;
  if (date.shape === YEAR_FIRST) return midnight(first, second, third);
  return date.shape === DAY_FIRST ? midnight(third, second, first) : dayOf(date, order);
}

/** The midnight of a date with day and month changed over; that of the date as taken where there is no such date. */
function turnedOf(date: DateSeen, order: DateOrder | null, taken: number): number {
  if (order === null || order === 'year-first' || date.shape === YEAR_FIRST || date.shape === DAY_FIRST)
    return taken;
  const other = dayOf(date, order === 'day-first' ? 'month-first' : 'day-first');
  return Number.isNaN(other) ? taken : other;
}

function decided(
  open: readonly OpenDate[],
  dateOrder: DateOrder | undefined,
  orderOfOthers: DateOrder | undefined,
): { readonly order: DateOrder | null; readonly by: UnderstoodClock['orderBy'] } {
  if (open.length === 0) return { order: null, by: 'the text' };
  if (dateOrder !== undefined) return { order: dateOrder, by: 'the house' };
  const { order, sure, possible } = dateOrderOf(open);
  if (sure) return { order, by: 'the whole file' };
  if (orderOfOthers !== undefined && possible.includes(orderOfOthers))
    return { order: orderOfOthers, by: 'the other files' };
  return { order, by: 'a guess' };
}
