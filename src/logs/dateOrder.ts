/** Day first, month first or year first: decided by the evidence of the whole file, never by one row. */

export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** Dates whose order the text leaves open, as three numbers each. */
export interface OpenDates {
  readonly parts: Int16Array;
  /** Per date: false when the third number is a year of four digits, so that only day and month are open. */
  readonly yearOpen: (i: number) => boolean;
  /** Seconds since midnight; same length as there are dates. */
  readonly clock: Float64Array;
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
 */
export function dateOrderOf(dates: OpenDates, rows: readonly number[]): Decision {
  const orders: readonly DateOrder[] = rows.every((i) => !dates.yearOpen(i))
    ? ['day-first', 'month-first']
    : ['day-first', 'month-first', 'year-first'];
  const read = orders.map((order) => {
    const times = rows
      .map((i) => dayOf(dates, i, order) + dates.clock[i])
      .filter((time) => !Number.isNaN(time));
    return { order, times };
  });
  const most = Math.max(...read.map(({ times }) => times.length));
  const possible = read.filter(({ times }) => times.length === most);
  const lost = rows.length - most;
  const others = Math.max(
    0,
    ...read.filter(({ times }) => times.length < most).map(({ times }) => times.length),
  );
  const names = possible.map(({ order }) => order);
  if (possible.length === 1) {
    const sure = lost <= others * MAX_STRAYS;
    return { order: names[0], sure, possible: sure ? names : [] };
  }
  const nights = possible.map(({ order, times }) => ({ order, bridged: nightsBridged(times) }));
  nights.sort((a, b) => b.bridged - a.bridged);
  const [best, next] = nights;
  if (best.bridged > next.bridged) return { order: best.order, sure: true, possible: names };
  return { order: names[0], sure: false, possible: names };
}

/** Midnight that begins a date, as seconds since 1970; NaN when there is no such date in that order. */
export function dayOf({ parts, yearOpen }: OpenDates, i: number, order: DateOrder): number {
  const first = parts[3 * i];
  const second = parts[3 * i + 1];
  const third = parts[3 * i + 2];
  if (order === 'year-first' && yearOpen(i)) return midnight(first, second, third);
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
const DAY = 86400;
/** The longest pause [s] over which a record still counts as running on. */
const PAUSE = 12 * 3600;

/** Changes of date that the record runs over without a long pause. */
function nightsBridged(times: readonly number[]): number {
  const sorted = Float64Array.from(times).sort();
  let bridged = 0;
  for (let i = 1; i < sorted.length; i++) {
    const before = sorted[i - 1];
    const after = sorted[i];
    if (Math.floor(before / DAY) !== Math.floor(after / DAY) && after - before <= PAUSE) bridged++;
  }
  return bridged;
}
