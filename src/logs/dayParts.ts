/** Times told in a column beside the date that does not look like a time: hours, parts of a day, morning or afternoon. */
import { namesTime, plainName } from './names.ts';
import { type SerialFrom, serialIn, timeOfSerial } from './serialDays.ts';
import { isCompactDate, readStamp, readStampOf, readTimeOfDay, type Stamp } from './stamp.ts';

/** A day in one column, written or as a spreadsheet's number, and what of it has passed in another. */
export interface DayAndPart {
  readonly kind: 'day and part';
  readonly at: number;
  /** Null where the day is written as a date. */
  readonly from: SerialFrom | null;
  readonly time: number;
  readonly part: 'clock' | 'hours' | 'days';
}

type Cells = readonly string[];

/** The time of a day and the part of it; null when either is none. */
export function stampOfParts(day: string, time: string, { from, part }: DayAndPart): Stamp | null {
  const date =
    from === null ? (isCompactDate(day) ? readStampOf(day, '00:00') : readStamp(day)) : serialDay(day, from);
  const clock = partOf(time, part);
  return date === null || Number.isNaN(clock) ? null : { ...date, clock: date.clock + clock, timed: true };
}

/**
 * What a column tells of the day in another: its cells rise (or, newest row first, fall) all through each day and
 * begin again with the next. Null where they do not, or where the header speaks of something else.
 */
export function partsBeside(days: Cells, cells: Cells, header: string): DayAndPart['part'] | null {
  const name = plainName(header);
  if (header !== '' && !namesTime(header) && !HOURS.test(name) && !/^column \d+$/.test(name)) return null;
  const part = (['clock', 'hours', 'days'] as const).find((it) =>
    mostly(cells, (cell) => !Number.isNaN(partOf(cell, it))),
  );
  return part !== undefined &&
    runsThroughDays(
      days,
      cells.map((cell) => partOf(cell, part)),
    )
    ? part
    : null;
}

/** "AM" and "PM" in cells of their own. */
export const tellsHalves = (cells: Cells | undefined): boolean =>
  cells !== undefined && mostly(cells, (cell) => /^[ap]\.?\s?m\.?$/i.test(cell));

/** Seconds since midnight; NaN for a cell that is no such part of a day. */
function partOf(cell: string, part: DayAndPart['part']): number {
  if (part === 'clock') return readTimeOfDay(cell);
  const isPart = part === 'hours' ? /^([01]?\d|2[0-4])$/ : /^(0?[.,]\d+|0|[1-9]([.,]\d+)?E-\d+)$/i;
  if (!isPart.test(cell)) return Number.NaN;
  const number = Number(cell.replace(',', '.'));
  return part === 'hours' ? number * 3600 : Math.round(number * 86400);
}

function serialDay(cell: string, from: SerialFrom): Stamp | null {
  const time = timeOfSerial(serialIn(cell, from), from);
  if (Number.isNaN(time)) return null;
  return { shape: 'year first', parts: [1970, 1, 1], clock: time, offset: Number.NaN, timed: false };
}

function runsThroughDays(days: Cells, parts: readonly number[]): boolean {
  let [rises, falls, begins] = [0, 0, 0];
  for (let i = 1; i < days.length; i++) {
    if (days[i] !== days[i - 1]) begins++;
    else if (parts[i] > parts[i - 1]) rises++;
    else if (parts[i] < parts[i - 1]) falls++;
  }
  return Math.max(rises, falls) >= MOSTLY * (days.length - 1 - begins) && rises + falls > 0;
}

const mostly = (cells: Cells, is: (cell: string) => boolean) =>
  cells.filter(is).length >= MOSTLY * Math.max(1, cells.length);

const MOSTLY = 0.95;
const HOURS =
  /^(h|hr|hrs|hours?|stunden?|std|horas?|heures?|ore|uur|godzina|hodina|tunti|time of day|part of day)\b/;
