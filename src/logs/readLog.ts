/** The way through: what kind of log it is, its rows as numbers, then clock, values, and one rising series per column. */
import { spacingOf } from '../series/steps.ts';
import { channelFindings, spacingFindings } from './channelFindings.ts';
import { readClock } from './clock.ts';
import { resetRows } from './clockReset.ts';
import { deadColumns } from './deadColumns.ts';
import { doubtsOf } from './doubts/index.ts';
import { rowTimes } from './instants.ts';
import type { LogChannel, LogFinding, LogHints, LogReading } from './log.ts';
import { mergeRows } from './merge.ts';
import { readRows } from './readRows.ts';
import { rowFindings } from './rowFindings.ts';
import { understand } from './understand.ts';

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
  const log = understand(file, bytes, hints);
  if (log.kind === 'no log')
    return { kind: 'unreadable', file, rows: 0, understood: null, findings: log.findings };
  const { roles, timeZone } = log;
  const all = readRows(log);
  const { rows } = all;
  const unreadable = (findings: readonly LogFinding[]): LogReading => ({
    kind: 'unreadable',
    file,
    rows: rows.count,
    understood: log.understood,
    findings: [...log.findings, ...findings],
  });
  if (roles.length === 0) {
    const headers = log.understood.columns.map(({ column }) => column);
    return unreadable([{ code: 'no-known-column', headers, where: { file } }]);
  }

  const clock = readClock(rows, log.headerOffset, hints.dateOrder, hints.orderOfOthers);
  const resets = new Set(resetRows(clock.shown));
  for (const i of resets) clock.shown[i] = Number.NaN;
  const isSame = (i: number, j: number) => rows.values.every((column) => Object.is(column[i], column[j]));
  const times = rowTimes(clock, rows.line, isSame, { timeZone, clockOffset: hints.clockOffset });

  const dead = deadColumns(roles, rows.values);
  const alive = roles.flatMap((role, c) => (dead.has(role) ? [] : [{ role, values: rows.values[c] }]));
  const columns = alive.map(({ values }) => values);
  const merged = mergeRows(times.instants, rows.line, columns, times.newestFirst);
  const read = alive.flatMap(({ role: { column, quantity } }, k) => {
    const { line, ...series } = merged.series[k];
    return series.time.length === 0 ? [] : [{ line, channel: { column: column.name, quantity, ...series } }];
  });
  const doubts = doubtsOf(read.map(({ channel }) => channel));
  const channels = read.map(({ channel }, k): LogChannel => ({ ...channel, doubt: doubts[k] }));

  const findings = [
    ...rowFindings(file, { all, roles, clock, resets, timeZone, times, dead, merged }),
    ...spacingFindings(file, merged),
    ...channels.flatMap((channel, k) => channelFindings(file, channel, read[k].line)),
  ];
  if (channels.length === 0) {
    const said = log.sample[0]?.[log.times.at] ?? '';
    const isUntimed = rows.count > 0 && clock.shown.every(Number.isNaN) && said !== '';
    const why: LogFinding = isUntimed
      ? { code: 'times-not-understood', said, where: { file } }
      : { code: 'no-readings', where: { file } };
    return unreadable([...findings, why]);
  }
  const { order, orderBy } = clock;
  return {
    kind: 'read',
    file,
    rows: rows.count,
    rejected: rows.count - merged.giving,
    interval: merged.time.length > 1 ? spacingOf(merged.time) : null,
    understood: { ...log.understood, clock: { ...log.understood.clock, order, orderBy } },
    channels,
    findings: [...log.findings, ...findings],
  };
}
