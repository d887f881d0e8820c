/** Which columns of a file hold the time, judged by what their cells look like. */
import { findHeader, offsetNamed } from './names.ts';
import { isDateAlone, readStamp, readTimeOfDay, type Stamp } from './stamp.ts';

export type TimeColumns =
  | { readonly kind: 'stamp'; readonly at: number }
  | { readonly kind: 'date and time'; readonly at: number; readonly time: number }
  | { readonly kind: 'epoch'; readonly at: number; readonly perSecond: 1 | 1000 };

type Row = readonly string[];

/**
 * The columns that hold the time in most of the rows; null when there are none.
 * `wanted` are headers that the house names; one that is not there is passed over.
 */
export function timeColumns(
  rows: readonly Row[],
  headers: readonly string[],
  wanted: { readonly time?: string | undefined; readonly date?: string | undefined },
): TimeColumns | null {
  const named = (header: string | undefined) => (header === undefined ? -1 : findHeader(headers, header));
  const time = named(wanted.time);
  const date = named(wanted.date);
  if (time >= 0 && date >= 0 && time !== date) return { kind: 'date and time', at: date, time };
  const found = candidates(rows, headers);
  const only = time >= 0 ? time : date;
  const fitting = found.filter(({ columns }) => only < 0 || usedBy(columns).includes(only));
  return (
    fitting.reduce<Candidate | null>((best, it) => (best && best.score >= it.score ? best : it), null)
      ?.columns ?? null
  );
}

/** The columns that hold the time. */
export const usedBy = (columns: TimeColumns): readonly number[] =>
  columns.kind === 'date and time' ? [columns.at, columns.time] : [columns.at];

/** The time of a row, taken apart; null when it has none. An epoch counts as a time of day of 1970-01-01 in UTC. */
export function timeOf(row: Row, columns: TimeColumns): Stamp | null {
  const cell = row[columns.at] ?? '';
  if (columns.kind === 'stamp') return readStamp(cell);
  if (columns.kind === 'epoch') {
    const clock = epochOf(cell, columns.perSecond);
    return Number.isNaN(clock) ? null : { shape: 'year first', parts: [1970, 1, 1], clock, offset: 0 };
  }
  return readStamp(`${cell.split(/[T ]/)[0] ?? ''} ${row[columns.time] ?? ''}`);
}

interface Candidate {
  readonly columns: TimeColumns;
  readonly score: number;
}

/** Times with a zone are preferred where the same file has both, and any time of day to a date alone. */
const ZONE_BONUS = 1.01;
const DATE_ALONE = 0.5;

function candidates(rows: readonly Row[], headers: readonly string[]): Candidate[] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const found: Candidate[] = [];
  const times = Array.from({ length: width }, (_, at) =>
    rows.reduce((n, row) => n + (Number.isNaN(readTimeOfDay(row[at] ?? '')) ? 0 : 1), 0),
  );
  for (let at = 0; at < width; at++) {
    const cells = rows.map((row) => row[at] ?? '');
    const stamps = cells.flatMap((cell) => readStamp(cell) ?? []);
    if (stamps.length > 0) {
      const zoned =
        stamps.some(({ offset }) => !Number.isNaN(offset)) || offsetNamed(headers[at] ?? '') !== null;
      const dates = stamps.every(({ clock }) => clock === 0) || cells.some(isDateAlone);
      const score = stamps.length * (zoned ? ZONE_BONUS : 1);
      const time = [at + 1, at - 1].find((beside) => times[beside] * 2 > stamps.length);
      if (dates && time !== undefined) found.push({ columns: { kind: 'date and time', at, time }, score });
      else found.push({ columns: { kind: 'stamp', at }, score: dates ? score * DATE_ALONE : score });
    }
    for (const perSecond of [1, 1000] as const) {
      const score = cells.filter((cell) => !Number.isNaN(epochOf(cell, perSecond))).length;
      if (score > 0) found.push({ columns: { kind: 'epoch', at, perSecond }, score: score * DATE_ALONE });
    }
  }
  return found;
}

/** Seconds since 1970 of a number that lies between 1990 and 2099; NaN for any other cell. */
function epochOf(cell: string, perSecond: 1 | 1000): number {
  if (!/^\d{9,13}([.,]\d+)?$/.test(cell)) return Number.NaN;
  const time = Number(cell.replace(',', '.')) / perSecond;
  return time >= 631_152_000 && time < 4_102_444_800 ? time : Number.NaN;
}
