/** The way through: what kind of log it is, then clock, values, and one rising series per column. */
import { median } from 'simple-statistics';
import { readClock } from './clock.ts';
import { columnValues } from './columnValues.ts';
import { rowTimes } from './instants.ts';
import type { LogChannel, LogFinding, LogHints, LogReading } from './log.ts';
import { mergeRows } from './merge.ts';
import { raggedRows } from './raggedRows.ts';
import { recognise } from './recognise.ts';
import { mark, newTally, type Tally } from './tally.ts';

/**
 * Reads any log of text. Dialect, clock and columns are found from the file as far as the house does not say.
 * Where the house names a column for a quantity, no other column is read as that quantity; the columns of other
 * quantities are read as well. Bad rows are counted and named by their lines, never thrown.
 *
 * @param file  its name, for the findings
 * @param bytes the file as it is
 * @throws RangeError if `hints.timeZone` is no time zone
 */
export function readLog(file: string, bytes: Uint8Array, hints: LogHints): LogReading {
  const log = recognise(file, bytes, hints);
  if (log.kind === 'no log') return { kind: 'unreadable', file, rows: log.rows, findings: log.findings };
  const { rows, lines } = log.layout;

  const clock = readClock(rows, log.times, log.headerOffset, hints.dateOrder);
  const ragged = new Set(raggedRows(log.layout, log.lastLineIsOpen));
  for (const i of ragged) clock.shown[i] = Number.NaN;
  const isSame = (i: number, j: number) => rows[i].every((cell, at) => cell === rows[j][at]);
  const { instants, newestFirst, missing, once } = rowTimes(clock, lines, isSame, hints);

  const { columns, findings: leftOut } = columnValues(file, log.layout, instants, log.roles, log.decimal);
  const values = columns.map((column) => column.values);
  const merged = mergeRows(instants, lines, values, newestFirst);

  const noTime = newTally();
  const noValue = newTally();
  const unclear = newTally();
  lines.forEach((line, i) => {
    if (ragged.has(i)) mark(unclear, line);
    else if (Number.isNaN(clock.shown[i])) mark(noTime, line);
    else if (!Number.isNaN(instants[i]) && values.every((column) => Number.isNaN(column[i])))
      mark(noValue, line);
  });

  const where = { file };
  const counted = (tally: Tally, finding: (account: Account) => LogFinding): LogFinding[] =>
    tally.count === 0 ? [] : [finding({ ...tally, where: { file, line: tally.lines[0] } })];
  const { timeZone } = hints;
  const findings: LogFinding[] = [
    ...log.findings,
    ...(clock.orderGuessed
      ? [{ code: 'date-order-unknown' as const, taken: clock.orderGuessed, where }]
      : []),
    ...counted(noTime, (it) => ({ code: 'rows-left-out', why: 'no time', ...it })),
    ...counted(noValue, (it) => ({ code: 'rows-left-out', why: 'no value', ...it })),
    ...counted(unclear, (it) => ({ code: 'rows-left-out', why: 'ragged', ...it })),
    ...counted(missing, (it) => ({ code: 'local-time-missing', timeZone, ...it })),
    ...counted(once, (it) => ({ code: 'doubled-hour-once', timeZone, ...it })),
    ...counted(merged.repeated, (it) => ({ code: 'rows-repeated', ...it })),
    ...counted(merged.conflicting, (it) => ({ code: 'values-conflict', ...it })),
    ...counted(merged.outOfOrder, (it) => ({ code: 'rows-out-of-order', ...it })),
    ...leftOut,
  ];
  const channels = columns.flatMap(({ role }, i): LogChannel[] => {
    const series = merged.series[i];
    if (series.time.length === 0) return [];
    return [{ column: role.column.name, quantity: role.quantity, ...series }];
  });
  if (channels.length === 0)
    return {
      kind: 'unreadable',
      file,
      rows: rows.length,
      findings: [...findings, { code: 'no-readings', where }],
    };
  const rejected = rows.length - merged.giving;
  return {
    kind: 'read',
    file,
    rows: rows.length,
    rejected,
    interval: spacing(merged.time),
    channels,
    findings,
  };
}

type Account = Tally & { readonly where: { readonly file: string; readonly line: number | undefined } };

/** Median step between instants [s]; null when there is only one. */
function spacing(time: Float64Array): number | null {
  const steps = Array.from(time.subarray(1), (instant, i) => instant - time[i]);
  return steps.length === 0 ? null : median(steps);
}
