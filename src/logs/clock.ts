/** The clock of a file: the time of every row as the logger showed it, day and month told apart. */
import { type DateOrder, dateOrderOf, dayOf, midnight, type OpenDates } from './dateOrder.ts';
import { type TimeColumns, timeOf } from './timeColumns.ts';

export interface Clock {
  /** What the clock showed, counted as if it were UTC [s since 1970]; NaN for a row without a time. */
  readonly shown: Float64Array;
  /** Offset from UTC [s] that the row states; NaN where it states none. */
  readonly offset: Float64Array;
  /** The order of day and month that was taken without evidence; null when nothing was left open. */
  readonly orderGuessed: 'day-first' | 'month-first' | null;
}

/**
 * Reads the time of every row.
 *
 * @param headerOffset offset from UTC that the header states for rows that state none [s]; null when it is silent
 * @param dateOrder    what the house says of day and month; it goes before the evidence
 */
export function readClock(
  rows: readonly (readonly string[])[],
  columns: TimeColumns,
  headerOffset: number | null,
  dateOrder: DateOrder | undefined,
): Clock {
  const shown = new Float64Array(rows.length).fill(Number.NaN);
  const offset = new Float64Array(rows.length).fill(Number.NaN);
  const clock = new Float64Array(rows.length);
  const parts = new Int16Array(3 * rows.length);
  const yearsOpen = new Uint8Array(rows.length);
  const open: number[] = [];
  rows.forEach((row, i) => {
    const stamp = timeOf(row, columns);
    if (stamp === null) return;
    const [a, b, c] = stamp.parts;
    offset[i] = Number.isNaN(stamp.offset) && headerOffset !== null ? headerOffset : stamp.offset;
    clock[i] = stamp.clock;
    if (stamp.shape === 'year first') shown[i] = midnight(a, b, c) + stamp.clock;
    else if (stamp.shape === 'day first') shown[i] = midnight(c, b, a) + stamp.clock;
    else {
      parts.set(stamp.parts, 3 * i);
      yearsOpen[i] = stamp.shape === 'open' ? 1 : 0;
      open.push(i);
    }
  });
  const dates: OpenDates = { parts, clock, yearOpen: (i) => yearsOpen[i] === 1 };
  const { order, sure } =
    open.length === 0 || dateOrder !== undefined
      ? { order: dateOrder ?? 'day-first', sure: true }
      : dateOrderOf(dates, open);
  for (const i of open) shown[i] = dayOf(dates, i, order) + clock[i];
  return { shown, offset, orderGuessed: sure ? null : order === 'month-first' ? order : 'day-first' };
}
