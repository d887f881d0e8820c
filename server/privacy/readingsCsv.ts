/** Stored readings as the CSV of a nameless house. */
import { perReportedUnit } from '../../src/report.ts';
import { DAY } from '../store/dayBlob.ts';
import type { Reading } from '../store/reading.ts';
import { type NamelessFile, TIME } from './nameless.ts';

/** Of figures: more are noise of the way they were reckoned. */
const DIGITS = 9;

/**
 * The text in pieces: the heading, then the rows of one UTC day after the other. No cell can be taken for a formula:
 * headings are ours, the rest are times and figures.
 */
export function* readingsCsv({ columns }: NamelessFile, reading: Reading): Generator<string> {
  yield `${[TIME, ...columns.map(({ heading }) => heading)].join(',')}\r\n`;
  const days = new Set(columns.flatMap(({ channel }) => reading.daysOf(channel.number)));
  for (const day of [...days].sort((a, b) => a - b))
    yield rowsOf(
      day,
      columns.map(({ channel: { number, quantity } }) => ({
        ...reading.day(number, day),
        scale: perReportedUnit[quantity] ?? 1,
        next: 0,
      })),
    );
}

interface Column {
  readonly time: Float64Array;
  readonly value: Float64Array;
  readonly scale: number;
  next: number;
}

/** A row for every instant that a column has. */
function rowsOf(day: number, columns: readonly Column[]): string {
  const [date] = new Date(day * DAY * 1000).toISOString().split('T');
  let rows = '';
  for (;;) {
    let time = Number.POSITIVE_INFINITY;
    for (const it of columns) if (it.time[it.next] < time) time = it.time[it.next];
    if (time === Number.POSITIVE_INFINITY) return rows;
    rows += `${date}T${clock(Math.floor(time) - day * DAY)}Z`;
    for (const it of columns)
      rows += it.time[it.next] === time ? `,${figure(it.value[it.next++] / it.scale)}` : ',';
    rows += '\r\n';
  }
}

function figure(value: number): string {
  const whole = String(value);
  return whole.length <= DIGITS ? whole : String(Number(value.toPrecision(DIGITS)));
}

/** @param seconds since midnight */
const clock = (seconds: number) =>
  `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
const two = (n: number) => (n < 10 ? `0${n}` : String(n));
