/** Which columns of a file hold the time, judged by what their cells look like. */
import { type DayAndPart, partsBeside, stampOfParts, tellsHalves } from './dayParts.ts';
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
  | {
      readonly kind: 'stamp';
      readonly at: number /** Where AM and PM stand apart. */;
      readonly half?: number;
    }
  | { readonly kind: 'date and time'; readonly at: number; readonly time: number; readonly half?: number }
  | { readonly kind: 'epoch'; readonly at: number; readonly perSecond: PerSecond }
  | { readonly kind: 'serial'; readonly at: number; readonly from: SerialFrom }
  | DayAndPart
  | Elapsed;

/** Counts of a second: seconds themselves, or a thousandth, a millionth, a milliardth. */
export type PerSecond = 1 | 1e3 | 1e6 | 1e9;

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
  if (time >= 0 && date >= 0 && time !== date) return asNamed(rows, date, time);
  const found = candidates(rows, headers);
  const only = time >= 0 ? time : date;
  const fitting = found.filter(({ columns }) => only < 0 || usedBy(columns).includes(only));
  return (
    fitting.reduce<Candidate | null>((best, it) => (best && best.score >= it.score ? best : it), null)
      ?.columns ?? null
  );
}

/** The columns that hold the time. */
export const usedBy = (columns: TimeColumns): readonly number[] => [
  columns.at,
  ...('time' in columns ? [columns.time] : []),
  ...('half' in columns && columns.half !== undefined ? [columns.half] : []),
];

/** The time of a row, taken apart; null when it has none. What counts from a day counts on from its midnight. */
export function timeOf(row: Row, columns: TimeColumns): Stamp | null {
  const cell = row[columns.at] ?? '';
  const half = 'half' in columns && columns.half !== undefined ? ` ${row[columns.half] ?? ''}` : '';
  if (columns.kind === 'stamp') return readStamp(`${cell}${half}`);
  if (columns.kind === 'epoch') return since1970(epochOf(cell, columns.perSecond), 0);
  if (columns.kind === 'serial')
    return since1970(timeOfSerial(serialIn(cell, columns.from), columns.from), Number.NaN);
  if (columns.kind === 'elapsed') {
    const { start, per, first, offset } = columns;
    return since1970(start + countOf(cell, per) - first * per, offset);
  }
  if (columns.kind === 'day and part') return stampOfParts(cell, row[columns.time] ?? '', columns);
  return readStampOf(cell, `${row[columns.time] ?? ''}${half}`);
}

function since1970(clock: number, offset: number): Stamp | null {
  if (Number.isNaN(clock)) return null;
  return { shape: 'year first', parts: [1970, 1, 1], clock, offset, timed: true };
}

/** The columns that the house names for date and time, as their cells are written. */
function asNamed(rows: readonly Row[], at: number, time: number): TimeColumns {
  const cells = (column: number) => rows.map((row) => row[column] ?? '');
  const days = cells(at);
  const part = partsBeside(days, cells(time), '');
  const from = serialDaysIn(days);
  if (part !== null && (part !== 'clock' || from !== null))
    return { kind: 'day and part', at, from, time, part };
  const half = halfBeside(rows, [at, time]);
  return { kind: 'date and time', at, time, ...(half !== undefined && { half }) };
}

/** Where AM and PM stand beside columns of time. */
const halfBeside = (rows: readonly Row[], columns: readonly number[]) =>
  columns
    .flatMap((at) => [at + 1, at - 1])
    .find((at) => at >= 0 && !columns.includes(at) && tellsHalves(rows.map((row) => row[at] ?? '')));

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
    ...stampCandidates(columns, at, times, headers),
    ...compactCandidates(columns, at, times),
    ...epochCandidates(cells, at),
    ...serialCandidates(columns, at, headers),
  ]);
}

function stampCandidates(
  columns: readonly (readonly string[])[],
  at: number,
  times: readonly number[],
  headers: readonly string[],
): Candidate[] {
  const cells = columns[at];
  const stamps = cells.flatMap((cell) => readStamp(cell) ?? []);
  if (stamps.length === 0) return [];
  const zoned = stamps.some(({ offset }) => !Number.isNaN(offset)) || zoneNamed(headers[at] ?? '') !== null;
  const dates = stamps.every(({ clock }) => clock === 0) || cells.some(isDateAlone);
  const score = stamps.length * (zoned ? ZONE_BONUS : 1);
  const time = [at + 1, at - 1].find((beside) => times[beside] * 2 > stamps.length);
  const besides = time === undefined || !dates ? [at] : [at, time];
  const halves = besides.flatMap((it) => [it + 1, it - 1]).find((it) => tellsHalves(columns[it]));
  const half = halves === undefined ? {} : { half: halves };
  if (dates && time !== undefined) return [{ columns: { kind: 'date and time', at, time, ...half }, score }];
  const parted = dates ? partedDays(columns, at, headers, null) : null;
  if (parted !== null) return [{ columns: parted, score }];
  return [{ columns: { kind: 'stamp', at, ...half }, score: dates ? score * DATE_ALONE : score }];
}

/** A column of days with a part of the day beside it; null where no column beside it tells one. */
function partedDays(
  columns: readonly (readonly string[])[],
  at: number,
  headers: readonly string[],
  from: SerialFrom | null,
): DayAndPart | null {
  for (const time of [at + 1, at - 1]) {
    const part = columns[time] && partsBeside(columns[at], columns[time], headers[time] ?? '');
    if (part) return { kind: 'day and part', at, from, time, part };
  }
  return null;
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
  return ([1, 1e3, 1e6, 1e9] as const).flatMap((perSecond) => {
    const score = cells.filter((cell) => !Number.isNaN(epochOf(cell, perSecond))).length;
    return score > 0 ? [{ columns: { kind: 'epoch', at, perSecond }, score: score * DATE_ALONE }] : [];
  });
}

/** Days from 1904 are looked for only where days from 1900 give no date of a logger. */
function serialCandidates(
  columns: readonly (readonly string[])[],
  at: number,
  headers: readonly string[],
): Candidate[] {
  const cells = columns[at];
  const filled = cells.filter((cell) => /^\d/.test(cell));
  const days = serialDaysIn(cells);
  const parted = days === null ? null : partedDays(columns, at, headers, days);
  if (parted !== null) return [{ columns: parted, score: filled.length * SERIAL }];
  const header = headers[at] ?? '';
  for (const from of [1900, 1904] as const) {
    const serials = filled.map((cell) => serialIn(cell, from)).filter((serial) => !Number.isNaN(serial));
    const fits = serials.length > 0 && serials.length >= 0.95 * filled.length;
    if (fits && (namesTime(header) || stepsEvenly(serials)))
      return [{ columns: { kind: 'serial', at, from }, score: serials.length * SERIAL }];
  }
  return [];
}

/** The system of a column of whole days; null where it holds anything else. */
function serialDaysIn(cells: readonly string[]): SerialFrom | null {
  const whole = cells.filter((cell) => /^\d{5}([.,]0+)?$/.test(cell));
  if (whole.length === 0 || whole.length < 0.95 * cells.length) return null;
  return (
    ([1900, 1904] as const).find((from) => whole.every((cell) => !Number.isNaN(serialIn(cell, from)))) ?? null
  );
}

/** Seconds since 1970 of a number that lies between 1990 and 2099; NaN for any other cell. */
function epochOf(cell: string, perSecond: PerSecond): number {
  if (!/^\d{9,19}([.,]\d+)?$/.test(cell)) return Number.NaN;
  const time = Number(cell.replace(',', '.')) / perSecond;
  return time >= 631_152_000 && time < 4_102_444_800 ? time : Number.NaN;
}
