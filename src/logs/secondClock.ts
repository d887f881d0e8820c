/** Columns that belong to a second column of time: two loggers side by side, each with its own clock. */
import { readClock } from './clock.ts';
import type { Column } from './column.ts';
import { readStamp, readTimeOfDay } from './stamp.ts';
import { stampsOf } from './stamps.ts';
import { type TimeColumns, timeOf, usedBy } from './timeColumns.ts';

export interface SecondClock {
  /** Where the other time stands. */
  readonly at: number;
  /** The columns that were measured at its times. */
  readonly columns: readonly Column[];
}

type Row = readonly string[];

/**
 * The columns of time beside the one that is read, each with the columns that belong to it: those up to the next
 * time, or since the one before where the times stand behind their readings. One that shows the same time row by row
 * as the one that is read is no other clock.
 */
export function secondClocks(
  rows: readonly Row[],
  times: TimeColumns,
  columns: readonly Column[],
): SecondClock[] {
  const shownBy = (clock: TimeColumns) =>
    readClock(stampsOf(rows.map((row) => timeOf(row, clock))), null, undefined, undefined).shown;
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const others = Array.from({ length: width }, (_, at) => at).flatMap((at) =>
    usedBy(times).includes(at) ? [] : (clockAt(rows, at) ?? []),
  );
  const places = [times, ...others].map(({ at }) => at).sort((a, b) => a - b);
  const [first] = places;
  const last = places[places.length - 1];
  const isBehind = columns.some(({ at }) => at < first) && !columns.some(({ at }) => at > last);
  const clockOf = ({ at }: Column) =>
    isBehind ? places.find((place) => place > at) : (places.findLast((place) => place < at) ?? first);
  const belonging = (place: number) => columns.filter((column) => clockOf(column) === place);
  if (belonging(times.at).length === 0) return [];
  const own = shownBy(times);
  return others.flatMap((other) => {
    const its = belonging(other.at);
    if (its.length === 0) return [];
    const differs = shownBy(other).some((time, i) => Math.abs(time - own[i]) > 0);
    return differs ? [{ at: other.at, columns: its }] : [];
  });
}

/** Date and time of day in most of the cells, or a date with a time of day in the column beside it. */
function clockAt(rows: readonly Row[], at: number): TimeColumns | null {
  const stamps = rows.flatMap((row) => readStamp(row[at] ?? '') ?? []);
  if (stamps.length * 2 <= rows.length) return null;
  if (stamps.some(({ timed }) => timed)) return { kind: 'stamp', at };
  const besides = rows.filter((row) => !Number.isNaN(readTimeOfDay(row[at + 1] ?? ''))).length;
  return besides * 2 > rows.length ? { kind: 'date and time', at, time: at + 1 } : null;
}
