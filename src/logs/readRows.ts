/** All rows of a log, from its bytes to a table of numbers: plain ones scanned, all others read as cells. */
import { afterNuls, asciiLike, isControl } from './encoding.ts';
import { rowFilter } from './rowFilter.ts';
import { rowReader } from './rowReader.ts';
import { type Rows, rowTable } from './rowTable.ts';
import { afterBreak, breaksBetween, isBreak, lineEnd, type ScanPlan, scanRows } from './scan/index.ts';
import { scanPlanOf } from './scanPlan.ts';
import { isSummary, LONGEST_SUMMARY } from './summary.ts';
import { mark, newTally, type Tally } from './tally.ts';
import { timeOf } from './timeColumns.ts';
import type { UnderstoodLog } from './understand.ts';

export interface AllRows {
  readonly rows: Rows;
  /** Lines with characters that no text holds. */
  readonly controls: Tally;
  /** Lines at the end that sum the record up. */
  readonly summary: Tally;
  /** Headers that come again with their columns in another order. */
  readonly moved: Tally;
  /** Columns that only such a header has: nothing is read of them. */
  readonly strangers: readonly string[];
}

/** @param plan how plain rows are scanned; null to read all rows as cells */
export function readRows(log: UnderstoodLog, plan: ScanPlan | null = scanPlanOf(log)): AllRows {
  const { encoding, delimiter, frame, times, decimal, roles, mayHoldControls } = log;
  const { bytes, encoding: label } = asciiLike(log.bytes, encoding);
  const width = frame.headers.length;
  const table = rowTable(width, roles, decimal, expectedRows(bytes.length, log.sample, width));
  const filter = rowFilter(frame);
  const readRow = rowReader(bytes, label, delimiter);
  const controls = newTally();
  /** Rows without a time that may turn out to be the end of the file. */
  const pending: { readonly row: readonly string[]; readonly ragged: boolean; readonly line: number }[] = [];
  const addFirstPending = () => {
    const first = pending.shift();
    if (first !== undefined) table.addCells(first.row, null, first.ragged, first.line);
  };
  const addAllPending = () => {
    while (pending.length > 0) addFirstPending();
  };

  /** @returns where the row ends */
  function addRow(from: number, to: number, line: number): number {
    const begin = mayHoldControls ? afterNuls(bytes, from, to) : from;
    const { cells, end } = readRow(begin, to);
    if (mayHoldControls && bytes.subarray(from, end).some(isControl)) mark(controls, line);
    if (line < frame.firstLine) return end;
    const row = filter.dataOf(cells, line);
    if (row === null) return end;
    const ragged = row.length > width && row.slice(width).some((cell) => cell !== '');
    const stamp = ragged ? null : timeOf(row, times);
    if (stamp === null) {
      pending.push({ row, ragged, line });
      if (pending.length > LONGEST_SUMMARY) addFirstPending();
    } else {
      addAllPending();
      table.addCells(row, stamp, false, line);
    }
    return end;
  }

  let at = 0;
  let line = 1;
  const addRowsUntil = (stop: (line: number) => boolean) => {
    while (at < bytes.length && !stop(line)) {
      const to = lineEnd(bytes, at);
      const end = to === at ? to : addRow(at, to, line);
      line += breaksBetween(bytes, at, end);
      at = afterBreak(bytes, end);
      line++;
    }
  };
  addRowsUntil((next) => plan !== null && next >= frame.firstLine);
  if (plan !== null)
    scanRows(bytes, at, line, plan, {
      rows(batch) {
        addAllPending();
        table.addBatch(batch, plan.time.kind === 'epoch' ? 'year first' : plan.time.shape);
      },
      odd(from, to, oddLine) {
        const end = addRow(from, to, oddLine);
        if (!filter.isMoved()) return end;
        // the columns stand elsewhere from here on
        at = afterBreak(bytes, end);
        line = oddLine + breaksBetween(bytes, from, end) + 1;
        return bytes.length;
      },
    });
  if (plan === null || filter.isMoved()) addRowsUntil(() => false);

  const summary = newTally();
  for (const { row, ragged, line: own } of pending) {
    if (isSummary(row)) mark(summary, own);
    else table.addCells(row, null, ragged, own);
  }
  const rows = table.rows();
  const last = rows.count - 1;
  // where the file breaks off in the middle of a line, the last number may have lost its end
  const breaksOff = bytes.length > 0 && !isBreak(bytes[bytes.length - 1]) && rows.lastWidth < width;
  if (breaksOff && last > 0) {
    rows.ragged[last] = 1;
    rows.shape[last] = 0;
  }
  return { rows, controls, summary, moved: filter.moved, strangers: filter.strangers() };
}

/** By the length of a sample of the rows. */
function expectedRows(bytes: number, sample: UnderstoodLog['sample'], width: number): number {
  const letters = sample.reduce((sum, row) => sum + row.reduce((all, cell) => all + cell.length, width), 0);
  return Math.ceil((1.02 * bytes * sample.length) / Math.max(1, letters));
}
