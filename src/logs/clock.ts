/** The clock of a file: the time of every row as the logger showed it, day and month told apart. */
import { type DateOrder, dateOrderOf, dayOf, midnight, type OpenDates } from './dateOrder.ts';
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
}

/**
 * Reads the time of every row.
 *
 * @param headerOffset  offset from UTC that header or preamble state for rows that state none [s]; null when silent
 * @param dateOrder     what the house says of day and month; it goes before the evidence
 * @param orderOfOthers what the house's other files have for certain; it decides where this one leaves it open
 */
export function readClock(
  { count, shape, parts, clock, offset: stated }: Stamps,
  headerOffset: number | null,
  dateOrder: DateOrder | undefined,
  orderOfOthers: DateOrder | undefined,
): Clock {
  const shown = new Float64Array(count).fill(Number.NaN);
  const offset = headerOffset === null ? stated : stated.map((it) => (Number.isNaN(it) ? headerOffset : it));
  const open: number[] = [];
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [parts[3 * i], parts[3 * i + 1], parts[3 * i + 2]];
    if (shape[i] === YEAR_FIRST) shown[i] = midnight(a, b, c) + clock[i];
    else if (shape[i] === DAY_FIRST) shown[i] = midnight(c, b, a) + clock[i];
    else if (shape[i] !== 0) open.push(i);
  }
  if (open.length === 0) return { shown, offset, order: null, orderBy: 'the text', orderGuessed: null };
  const dates: OpenDates = { parts, clock, yearOpen: (i) => shape[i] === OPEN };
  const { order, by } = decided(dates, open, dateOrder, orderOfOthers);
  for (const i of open) shown[i] = dayOf(dates, i, order) + clock[i];
  const guessed = order === 'month-first' ? order : 'day-first';
  return { shown, offset, order, orderBy: by, orderGuessed: by === 'a guess' ? guessed : null };
}

const YEAR_FIRST = shapeCode('year first');
const DAY_FIRST = shapeCode('day first');
const OPEN = shapeCode('open');

function decided(
  dates: OpenDates,
  open: readonly number[],
  dateOrder: DateOrder | undefined,
  orderOfOthers: DateOrder | undefined,
): { readonly order: DateOrder; readonly by: UnderstoodClock['orderBy'] } {
  if (dateOrder !== undefined) return { order: dateOrder, by: 'the house' };
  const { order, sure, possible } = dateOrderOf(dates, open);
  if (sure) return { order, by: 'the whole file' };
  if (orderOfOthers !== undefined && possible.includes(orderOfOthers))
    return { order: orderOfOthers, by: 'the other files' };
  return { order, by: 'a guess' };
}
