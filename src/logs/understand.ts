/** What kind of log this is, from a sample of its lines: its text, dialect, frame, clock, and what its columns hold. */
import { readClock } from './clock.ts';
import { type Column, columnsOf, namesOf } from './column.ts';
import { understoodColumns } from './confidence.ts';
import { decimalOf } from './decimalMark.ts';
import { type Encoding, encodingOf } from './encoding.ts';
import { fileZone } from './fileZone.ts';
import type { Frame } from './frame.ts';
import type { LogFinding, LogHints } from './log.ts';
import { findHeader } from './names.ts';
import type { Decimal } from './numbers.ts';
import { readPreamble } from './preamble.ts';
import type { Role } from './role.ts';
import { rolesOf } from './roles.ts';
import { sampleOf } from './sample.ts';
import { secondClocks } from './secondClock.ts';
import { stampsOf } from './stamps.ts';
import type { Delimiter } from './table.ts';
import { withTemperatureUnit } from './temperatureUnit.ts';
import { type TimeColumns, timeColumns, timeOf, usedBy } from './timeColumns.ts';
import { settled } from './timesSettled.ts';
import type { Understood } from './understood.ts';
import { understoodClock } from './understoodClock.ts';
import { couldBeFahrenheitOnly, couldBeKilowatts } from './unitDoubt.ts';
import { unitNamed } from './units.ts';
import { unpack } from './unpack.ts';

/** A log as far as a sample of it tells. */
export interface UnderstoodLog {
  /** The log itself, out of its archive. */
  readonly bytes: Uint8Array;
  readonly encoding: Encoding;
  /** Whether characters may be met that no text holds. */
  readonly mayHoldControls: boolean;
  readonly delimiter: Delimiter;
  readonly frame: Frame;
  readonly times: TimeColumns;
  /** Offset from UTC that header or preamble state [s]; null where they state none. */
  readonly headerOffset: number | null;
  /** The zone of the clock: the file's where it names one, else the house's. */
  readonly timeZone: string;
  readonly decimal: Decimal;
  /** None where nothing in the file is known. */
  readonly roles: readonly Role[];
  /** Rows with a time and a number, from all over the file. */
  readonly sample: readonly (readonly string[])[];
  readonly understood: Understood;
  readonly findings: readonly LogFinding[];
}

export type Understanding =
  | ({ readonly kind: 'log' } & UnderstoodLog)
  | { readonly kind: 'no log'; readonly findings: readonly LogFinding[] };

/** Reads no more than the head of the file and lines spread over the rest of it. */
export function understand(file: string, bytes: Uint8Array, hints: LogHints): Understanding {
  const where = { file };
  const noLog = (finding: LogFinding): Understanding => ({ kind: 'no log', findings: [finding] });
  const unpacked = unpack(bytes);
  if (unpacked.kind === 'several logs')
    return noLog({ code: 'archive-several-logs', names: unpacked.names, where });
  if (unpacked.kind === 'refused') return noLog({ code: 'archive-refused', why: unpacked.why, where });
  const readable = encodingOf(unpacked.bytes);
  if (readable.kind === 'empty') return noLog({ code: 'file-empty', where });
  if (readable.kind === 'not text')
    return noLog({ code: 'file-not-text', looksLike: readable.looksLike, where });

  const found = sampleOf(unpacked.bytes, readable.encoding);
  if (found.kind !== 'found')
    return noLog(
      found.kind === 'no clock'
        ? { code: 'times-not-understood', said: found.said, where }
        : { code: found.kind === 'no time' ? 'no-time-column' : 'no-readings', where },
    );
  const { delimiter, frame, sample } = found;
  const { headers } = frame;
  const names = namesOf(headers);
  const preamble = readPreamble(frame.preamble);
  const looked = timeColumns(sample, names, hints.columns) ?? found.columns;
  const { times, findings: timeFindings } = settled(file, looked, frame, sample, preamble, hints);
  if (times === null) return { kind: 'no log', findings: timeFindings };

  const used = usedBy(times);
  const cellsIn = (at: number) => sample.map((row) => row[at] ?? '');
  const others = headers.flatMap((header, at) =>
    used.includes(at) ? [] : [{ header, below: frame.units[at] ?? '', cells: cellsIn(at) }],
  );
  const mark =
    hints.decimal === undefined ? decimalOf(others, delimiter) : { decimal: hints.decimal, guessed: false };
  const { decimal } = mark;
  const columns = columnsOf(headers, frame.units, sample, decimal, used);
  const seconds = secondClocks(sample, times, columns);
  const named = Object.values(hints.columns).map((wanted) => findHeader(names, wanted));
  const isOthers = ({ at }: Column) =>
    !named.includes(at) && seconds.some((second) => second.columns.some((column) => column.at === at));
  const own = columns.filter((column) => !isOthers(column));
  const { roles, guessed } = withTemperatureUnit(rolesOf(own, names, hints), frame.preamble);

  const findings: LogFinding[] = [...columnsNotFound(file, names, hints), ...timeFindings];
  if (mark.guessed) findings.push({ code: 'decimal-mark-guessed', taken: decimal, where });
  const doubted = roles.filter((role) => isDoubted(role, hints));
  if (guessed !== null && doubted.length === 0)
    findings.push({ code: 'temperature-unit-guessed', taken: guessed, where });
  for (const role of roles) {
    const column = { file, column: role.column.name };
    if (role.byRange) findings.push({ code: 'quantity-guessed', taken: role.quantity, where: column });
    if (couldBeKilowatts(role)) findings.push({ code: 'unit-assumed', taken: 'W', where: column });
    if (doubted.includes(role)) {
      const taken = role.unit === unitNamed('C') ? 'C' : 'F';
      findings.push({ code: 'unit-doubted', stated: 'C', taken, where: column });
    }
  }
  for (const { at, columns: its } of seconds) {
    const notRead = its.filter(isOthers).map(({ name }) => name);
    if (notRead.length > 0)
      findings.push({ code: 'second-time-column', notRead, where: { file, column: names[at] } });
  }
  const over = used.flatMap((at) => [headers[at] ?? '', frame.units[at] ?? '']);
  const cells = sample.map((row) => row[used[used.length - 1]] ?? '');
  const stamps = stampsOf(sample.map((row) => timeOf(row, times)));
  const sampled = readClock(stamps, null, hints.dateOrder, hints.orderOfOthers);
  const zone = fileZone(file, over, preamble, cells, sampled.shown, hints);
  const clock = understoodClock(sampled, times, names, zone);
  if (clock.zoneBy !== 'each row') findings.push(...zone.findings);

  const { encoding, mayHoldControls } = readable;
  const understood: Understood = {
    packed: unpacked.packed,
    encoding,
    delimiter,
    decimal,
    headerLine: frame.headerLine,
    preamble,
    clock,
    columns: understoodColumns(frame, columns, roles, used, sample, hints),
    sample: found.first,
  };
  return {
    kind: 'log',
    bytes: unpacked.bytes,
    encoding,
    mayHoldControls,
    delimiter,
    frame,
    times,
    headerOffset: zone.offset,
    timeZone: zone.zone,
    decimal,
    roles,
    sample,
    understood,
    findings,
  };
}

const isDoubted = ({ column, unit }: Role, hints: LogHints): boolean => {
  const stated = column.units.find((it) => it.sure && it.unit.measures === 'temperature')?.unit;
  return (
    hints.temperatureUnit === undefined &&
    stated !== undefined &&
    unit.measures === 'temperature' &&
    couldBeFahrenheitOnly(column, stated)
  );
};

/** Columns that the house names and the file does not have. */
const columnsNotFound = (file: string, names: readonly string[], hints: LogHints): LogFinding[] =>
  Object.values(hints.columns)
    .filter((wanted) => findHeader(names, wanted) < 0)
    .map((wanted) => ({ code: 'column-not-found', wanted, headers: names, where: { file } }));
