/** The rows of a plain file from its bytes, many times faster than by way of text; whatever is not plain is handed over. */
import { afterBreak, breaksBetween, CARRIAGE_RETURN, digitAt, HASH, LINE_FEED } from './bytes.ts';
import { afterGap, clockInto } from './clock.ts';
import { dateInto } from './date.ts';
import { numberInto } from './number.ts';
import type { ScanPlan, ScanTime } from './plan.ts';
import { RowCells } from './rowCells.ts';
import { newBatch, type RowBatch, type RowSink } from './sink.ts';

/**
 * Scans the rows from a place on to the end. Line breaks are LF, CR or CRLF, mixed as they come; empty lines are
 * counted and left out. A row is read only where it matches the plan in every cell; it is never guessed at.
 *
 * @param bytes the whole file, in ASCII or any encoding that extends it (UTF-8, Windows-1252)
 * @param from  the first byte of a row
 * @param line  the line of that row, from 1
 * @throws RangeError if the plan names a column that its rows do not have
 */
export function scanRows(bytes: Uint8Array, from: number, line: number, plan: ScanPlan, sink: RowSink): void {
  const { time, columns, decimal, width } = plan;
  if ([...columns, ...usedBy(time)].some((at) => !(at >= 0 && at < width)))
    throw new RangeError(`a column outside the ${width} of each row`);
  const cells = new RowCells(plan);
  const mark = decimal.charCodeAt(0);
  const batch = newBatch(BATCH, columns.length);
  const flush = () => {
    if (batch.count > 0) sink.rows(batch);
    batch.count = 0;
  };

  let start = from;
  let lineNow = line;
  while (start < bytes.length) {
    const first = bytes[start];
    if (first !== LINE_FEED && first !== CARRIAGE_RETURN) {
      const plain =
        cells.split(bytes, start) &&
        bytes[cells.from[0]] !== HASH &&
        timeInto(bytes, cells, time, mark, batch) &&
        valuesInto(bytes, cells, columns, mark, batch);
      if (plain) {
        batch.line[batch.count++] = lineNow;
        start = cells.end;
        if (batch.count === BATCH) flush();
      } else {
        flush();
        const end = Math.max(cells.end, sink.odd(start, cells.end, lineNow));
        lineNow += breaksBetween(bytes, cells.end, end);
        start = end;
      }
    }
    start = afterBreak(bytes, start);
    lineNow++;
  }
  flush();
}

/** Rows handed on at once: enough to make the call cheap, few enough to stay in the cache. */
const BATCH = 4096;

const usedBy = (time: ScanTime) => (time.kind === 'date and time' ? [time.at, time.time] : [time.at]);

function timeInto(
  bytes: Uint8Array,
  cells: RowCells,
  time: ScanTime,
  mark: number,
  batch: RowBatch,
): boolean {
  const row = batch.count;
  const from = cells.from[time.at];
  const to = cells.to[time.at];
  if (time.kind === 'epoch') return epochInto(bytes, from, to, mark, time.perSecond, batch);
  const end = dateInto(bytes, from, to, time.shape, batch.parts, row);
  if (end < 0) return false;
  if (time.kind === 'date and time')
    return end === to && clockInto(bytes, cells.from[time.time], cells.to[time.time], batch, row);
  if (end === to) {
    batch.clock[row] = 0;
    batch.offset[row] = Number.NaN;
    return true;
  }
  const begin = afterGap(bytes, end, to);
  return begin >= 0 && clockInto(bytes, begin, to, batch, row);
}

/** Seconds or milliseconds since 1970, of 9 to 13 digits before the mark, between 1990 and 2099. */
function epochInto(
  bytes: Uint8Array,
  from: number,
  to: number,
  mark: number,
  perSecond: number,
  batch: RowBatch,
): boolean {
  const row = batch.count;
  const point = afterDigits(bytes, from, to);
  const digits = point - from;
  const whole = point === to;
  const fraction = bytes[point] === mark && point + 1 < to && afterDigits(bytes, point + 1, to) === to;
  if (digits < 9 || digits > 13 || !(whole || fraction)) return false;
  if (!numberInto(bytes, from, to, mark, batch.clock, row)) return false;
  batch.clock[row] /= perSecond;
  batch.offset[row] = 0;
  batch.parts[3 * row] = 1970;
  batch.parts[3 * row + 1] = 1;
  batch.parts[3 * row + 2] = 1;
  return batch.clock[row] >= FIRST_EPOCH && batch.clock[row] < LAST_EPOCH;
}

function afterDigits(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (digitAt(bytes, at, to) >= 0) at++;
  return at;
}

/** The beginning of 1990 and the end of 2099 [s since 1970 UTC]. */
const FIRST_EPOCH = 631_152_000;
const LAST_EPOCH = 4_102_444_800;

function valuesInto(
  bytes: Uint8Array,
  cells: RowCells,
  columns: readonly number[],
  mark: number,
  batch: RowBatch,
): boolean {
  for (let c = 0; c < columns.length; c++) {
    const from = cells.from[columns[c]];
    const to = cells.to[columns[c]];
    if (from === to) batch.values[c][batch.count] = Number.NaN;
    else if (!numberInto(bytes, from, to, mark, batch.values[c], batch.count)) return false;
  }
  return true;
}
