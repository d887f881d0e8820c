/** Rows in any order, repeats among them, to one rising series per column. */
import { resized } from './growing.ts';
import { mark, newTally, type Tally } from './tally.ts';

export interface Merged {
  /** Per column: its readings in the order of time, each with its line. */
  readonly series: readonly {
    readonly time: Float64Array;
    readonly value: Float64Array;
    readonly line: Int32Array;
  }[];
  /** Instants that hold a reading of any column, strictly rising [s]. */
  readonly time: Float64Array;
  /** The line of each. */
  readonly line: Int32Array;
  /** Rows that gave a reading. */
  readonly giving: number;
  /** Rows that only said again what a row before had said. */
  readonly repeated: Tally;
  /** Rows that gave another value for an instant; the first in the file is kept. */
  readonly conflicting: Tally;
  readonly outOfOrder: Tally;
}

/**
 * @param instants    time of each row [s since 1970 UTC]; NaN where it has none
 * @param lines       line of each row
 * @param columns     values of each column, NaN where there is none; each as long as `instants`
 * @param newestFirst the file runs backwards, which is an order too
 */
export function mergeRows(
  instants: Float64Array,
  lines: Int32Array,
  columns: readonly Float64Array[],
  newestFirst: boolean,
): Merged {
  const repeated = newTally();
  const conflicting = newTally();
  if (columns.length > 0 && isRising(instants) && columns.every(isWhole)) {
    const all = { time: instants, line: lines };
    const series = columns.map((value) => ({ ...all, value }));
    return { series, ...all, giving: instants.length, repeated, conflicting, outOfOrder: newTally() };
  }
  const { rows, outOfOrder } = inOrder(instants, lines, newestFirst);
  const kept = columns.map((values) => ({ values, ...emptySeries(rows.length), count: 0 }));
  const time = new Float64Array(rows.length);
  const line = new Int32Array(rows.length);
  let times = 0;
  let giving = 0;
  for (let k = 0; k < rows.length; k++) {
    const i = rows[k];
    const instant = instants[i];
    let news = false;
    let again = false;
    let conflict = false;
    for (let c = 0; c < kept.length; c++) {
      const series = kept[c];
      const value = series.values[i];
      if (Number.isNaN(value)) continue;
      const latest = series.count - 1;
      if (latest >= 0 && series.time[latest] === instant) {
        again = true;
        if (series.value[latest] !== value) conflict = true;
        continue;
      }
      series.time[series.count] = instant;
      series.line[series.count] = lines[i];
      series.value[series.count++] = value;
      news = true;
    }
    if (conflict) mark(conflicting, lines[i]);
    else if (again && !news) mark(repeated, lines[i]);
    if (!news) continue;
    giving++;
    if (times > 0 && time[times - 1] === instant) continue;
    time[times] = instant;
    line[times++] = lines[i];
  }
  const series = kept.map((it) => ({
    time: resized(it.time, it.count),
    value: resized(it.value, it.count),
    line: resized(it.line, it.count),
  }));
  const all = { time: resized(time, times), line: resized(line, times) };
  return { series, ...all, giving, repeated, conflicting, outOfOrder };
}

/** Each after the one before, none missing: what nearly all logs are, and what needs no merging. */
function isRising(instants: Float64Array): boolean {
  for (let i = 1; i < instants.length; i++) if (!(instants[i] > instants[i - 1])) return false;
  return !Number.isNaN(instants[0]);
}

function isWhole(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) return false;
  return true;
}

const emptySeries = (length: number) => ({
  time: new Float64Array(length),
  value: new Float64Array(length),
  line: new Int32Array(length),
});

/** The rows that have a time, by time and then by their place in the file. */
function inOrder(instants: Float64Array, lines: Int32Array, newestFirst: boolean) {
  const outOfOrder = newTally();
  const all = new Int32Array(instants.length);
  let count = 0;
  let furthest = Number.NaN;
  for (let i = 0; i < instants.length; i++) {
    if (Number.isNaN(instants[i])) continue;
    all[count++] = i;
    if (newestFirst ? instants[i] > furthest : instants[i] < furthest) mark(outOfOrder, lines[i]);
    else furthest = instants[i];
  }
  const rows = all.subarray(0, count);
  if (newestFirst || outOfOrder.count > 0) rows.sort((i, j) => instants[i] - instants[j] || i - j);
  return { rows, outOfOrder };
}
