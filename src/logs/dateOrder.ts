/** Day first, month first or year first: decided by the evidence of the whole file, never by one row. */

export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** One date whose order the text leaves open, and the rows that have it. */
export interface OpenDate {
  /** Its three numbers in the order of the text. */
  readonly parts: readonly [number, number, number];
  /** False when the third number is a year of four digits, so that only day and month are open. */
  readonly yearOpen: boolean;
  readonly rows: number;
  /** Seconds since midnight of the earliest and the latest of them. */
  readonly earliest: number;
  readonly latest: number;
}

export interface Decision {
  readonly order: DateOrder;
  /** False when the file does not tell and the first possible order was taken. */
  readonly sure: boolean;
  /** The orders that make real dates of the rows equally well; none where the rows contradict each other. */
  readonly possible: readonly DateOrder[];
}

/**
 * The order that makes a real date of the most rows (a day above 12 decides). Where several do, the one under
 * which the record runs on over midnight: read the wrong way round, days that follow each other lie a month apart.
 *
 * @param dates each date once
 */
export function dateOrderOf(dates: readonly OpenDate[]): Decision {
  const orders: readonly DateOrder[] = dates.every(({ yearOpen }) => !yearOpen)
    ? ['day-first', 'month-first']
    : ['day-first', 'month-first', 'year-first'];
  const read = orders.map((order) => {
    const days = dates
      .map((date) => ({ ...date, day: dayOf(date, order) }))
      .filter(({ day }) => !Number.isNaN(day));
    return { order, days, rows: days.reduce((sum, { rows }) => sum + rows, 0) };
  });
  const most = Math.max(...read.map(({ rows }) => rows));
  const possible = read.filter(({ rows }) => rows === most);
  const lost = dates.reduce((sum, { rows }) => sum + rows, 0) - most;
  const others = Math.max(0, ...read.filter(({ rows }) => rows < most).map(({ rows }) => rows));
  const names = possible.map(({ order }) => order);
  if (possible.length === 1) {
    const sure = lost <= others * MAX_STRAYS;
    return { order: names[0], sure, possible: sure ? names : [] };
  }
  const nights = possible.map(({ order, days }) => ({ order, bridged: nightsBridged(days) }));
  nights.sort((a, b) => b.bridged - a.bridged);
  const [best, next] = nights;
  if (best.bridged > next.bridged) return { order: best.order, sure: true, possible: names };
  return { order: names[0], sure: false, possible: names };
}

/** Midnight that begins a date, as seconds since 1970; NaN when there is no such date in that order. */
export function dayOf({ parts, yearOpen }: Pick<OpenDate, 'parts' | 'yearOpen'>, order: DateOrder): number {
  const [first, second, third] = parts;
  if (order === 'year-first' && yearOpen) return midnight(first, second, third);
  return order === 'month-first' ? midnight(third, first, second) : midnight(third, second, first);
}

/** Seconds since 1970 of a date; two-digit years are 1970 to 2069. NaN when it does not exist or is no logger's. */
export function midnight(year: number, month: number, day: number): number {
  const full = year >= 100 ? year : year + (year < 70 ? 2000 : 1900);
  if (month < 1 || month > 12 || day < 1 || full < 1900 || full > 2199) return Number.NaN;
  if (day > 28 && day > new Date(Date.UTC(full, month, 0)).getUTCDate()) return Number.NaN;
  return Date.UTC(full, month - 1, day) / 1000;
}

/** Rows that fit only a losing order are strays up to this share; beyond it the file mixes two orders. */
const MAX_STRAYS = 0.01;
/** The longest pause [s] over which a record still counts as running on. */
const PAUSE = 12 * 3600;

interface Day {
  /** Its midnight [s]. */
  readonly day: number;
  readonly earliest: number;
  readonly latest: number;
}

/** Changes of date that the record runs over without a long pause. */
function nightsBridged(days: readonly Day[]): number {
  const sorted = days.toSorted((a, b) => a.day - b.day);
  return sorted.filter((it, i) => {
    const before = sorted[i - 1];
    return (
      before !== undefined &&
      it.day > before.day &&
      it.day + it.earliest - before.day - before.latest <= PAUSE
    );
  }).length;
}
