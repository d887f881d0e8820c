/** Which columns of a file hold the time, judged by what their cells look like. */
import { countOf, type Elapsed } from './elapsed.ts';
import { findHeader, namesTime } from './names.ts';
import { type SerialFrom, serialIn, stepsEvenly, timeOfSerial } from './serialDays.ts';
import {
  isCompactDate,
  isCompactTime,
  isDateAlone,
  readStamp,
  readStampOf,
  readTimeOfDay,
  type Stamp,
} from './stamp.ts';
import { zoneNamed } from './zoneNamed.ts';

export type TimeColumns =
  | { readonly kind: 'stamp'; readonly at: number }
  | { readonly kind: 'date and time'; readonly at: number; readonly time: number }
  | { readonly kind: 'epoch'; readonly at: number; readonly perSecond: 1 | 1000 }
  | { readonly kind: 'serial'; readonly at: number; readonly from: SerialFrom }
  | Elapsed;

type Row = readonly string[];

/**
 * The columns that hold the time in most of the rows; null when there are none. Times that count from a start are
 * not among them (elapsed.ts).
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

/** The time of a row, taken apart; null when it has none. What counts from a day counts on from its midnight. */
export function timeOf(row: Row, columns: TimeColumns): Stamp | null {
  const cell = row[columns.at] ?? '';
  if (columns.kind === 'stamp') return readStamp(cell);
  if (columns.kind === 'epoch') return since1970(epochOf(cell, columns.perSecond), 0);
  if (columns.kind === 'serial')
    return since1970(timeOfSerial(serialIn(cell, columns.from), columns.from), Number.NaN);
  if (columns.kind === 'elapsed') {
    const { start, per, first, offset } = columns;
    return since1970(start + countOf(cell, per) - first * per, offset);
  }
  return readStampOf(cell, row[columns.time] ?? '');
}

function since1970(clock: number, offset: number): Stamp | null {
  if (Number.isNaN(clock)) return null;
  return { shape: 'year first', parts: [1970, 1, 1], clock, offset, timed: true };
}

interface Candidate {
  readonly columns: TimeColumns;
  readonly score: number;
}

/** Times with a zone are preferred where the same file has both, and any time of day to a date alone. */
const ZONE_BONUS = 1.01;
const DATE_ALONE = 0.5;
/** Numbers that may be days count only where nothing else is a time. */
const SERIAL = 0.3;

function candidates(rows: readonly Row[], headers: readonly string[]): Candidate[] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const columns = Array.from({ length: width }, (_, at) => rows.map((row) => row[at] ?? ''));
  const times = columns.map((cells) => cells.filter((cell) => !Number.isNaN(readTimeOfDay(cell))).length);
  return columns.flatMap((cells, at) => [
    ...stampCandidates(cells, at, times, headers[at] ?? ''),
    ...compactCandidates(columns, at, times),
    ...epochCandidates(cells, at),
    ...serialCandidates(cells, at, headers[at] ?? ''),
  ]);
}

function stampCandidates(
  cells: readonly string[],
  at: number,
  times: readonly number[],
  header: string,
): Candidate[] {
  const stamps = cells.flatMap((cell) => readStamp(cell) ?? []);
  if (stamps.length === 0) return [];
  const zoned = stamps.some(({ offset }) => !Number.isNaN(offset)) || zoneNamed(header) !== null;
  const dates = stamps.every(({ clock }) => clock === 0) || cells.some(isDateAlone);
  const score = stamps.length * (zoned ? ZONE_BONUS : 1);
  const time = [at + 1, at - 1].find((beside) => times[beside] * 2 > stamps.length);
  if (dates && time !== undefined) return [{ columns: { kind: 'date and time', at, time }, score }];
  return [{ columns: { kind: 'stamp', at }, score: dates ? score * DATE_ALONE : score }];
}

/** "20260125" beside "18:10" or "1810". */
function compactCandidates(
  columns: readonly (readonly string[])[],
  at: number,
  times: readonly number[],
): Candidate[] {
  const dates = columns[at].filter(isCompactDate).length;
  if (dates === 0) return [];
  const time = [at + 1, at - 1].find(
    (beside) => Math.max(times[beside] ?? 0, columns[beside]?.filter(isCompactTime).length ?? 0) * 2 > dates,
  );
  return time === undefined ? [] : [{ columns: { kind: 'date and time', at, time }, score: dates }];
}

function epochCandidates(cells: readonly string[], at: number): Candidate[] {
  return ([1, 1000] as const).flatMap((perSecond) => {
    const score = cells.filter((cell) => !Number.isNaN(epochOf(cell, perSecond))).length;
    return score > 0 ? [{ columns: { kind: 'epoch', at, perSecond }, score: score * DATE_ALONE }] : [];
  });
}

/** Days from 1904 are looked for only where days from 1900 give no date of a logger. */
function serialCandidates(cells: readonly string[], at: number, header: string): Candidate[] {
  const filled = cells.filter((cell) => /^\d/.test(cell));
  for (const from of [1900, 1904] as const) {
    const serials = filled.map((cell) => serialIn(cell, from)).filter((serial) => !Number.isNaN(serial));
    const fits = serials.length > 0 && serials.length >= 0.95 * filled.length;
    if (fits && (namesTime(header) || stepsEvenly(serials)))
      return [{ columns: { kind: 'serial', at, from }, score: serials.length * SERIAL }];
  }
  return [];
}

/** Seconds since 1970 of a number that lies between 1990 and 2099; NaN for any other cell. */
function epochOf(cell: string, perSecond: 1 | 1000): number {
  if (!/^\d{9,13}([.,]\d+)?$/.test(cell)) return Number.NaN;
  const time = Number(cell.replace(',', '.')) / perSecond;
  return time >= 631_152_000 && time < 4_102_444_800 ? time : Number.NaN;
}
