/** What kind of log this is: its text, dialect, layout, time columns, and what its columns hold. */
import { columnsOf, namesOf } from './column.ts';
import { dialectOf, spread } from './dialect.ts';
import { decode } from './encoding.ts';
import { type Layout, layoutOf } from './layout.ts';
import type { LogFinding, LogHints } from './log.ts';
import { findHeader, offsetNamed } from './names.ts';
import { type Decimal, decimalOf } from './numbers.ts';
import type { Role } from './role.ts';
import { rolesOf } from './roles.ts';
import { tableOf } from './table.ts';
import { withTemperatureUnit } from './temperatureUnit.ts';
import { type TimeColumns, timeColumns, usedBy } from './timeColumns.ts';

export type Recognised =
  | {
      readonly kind: 'log';
      readonly layout: Layout;
      readonly times: TimeColumns;
      /** Offset from UTC that the header of the time states [s]; null when it is silent. */
      readonly headerOffset: number | null;
      readonly decimal: Decimal;
      /** At least one. */
      readonly roles: readonly Role[];
      /** The last line does not end in a line break. */
      readonly lastLineIsOpen: boolean;
      readonly findings: readonly LogFinding[];
    }
  | { readonly kind: 'no log'; readonly rows: number; readonly findings: readonly LogFinding[] };

export function recognise(file: string, bytes: Uint8Array, hints: LogHints): Recognised {
  const where = { file };
  const noLog = (finding: LogFinding): Recognised => ({ kind: 'no log', rows: 0, findings: [finding] });
  const decoded = decode(bytes);
  if (decoded.kind === 'empty') return noLog({ code: 'file-empty', where });
  if (decoded.kind === 'not text')
    return noLog({ code: 'file-not-text', looksLike: decoded.looksLike, where });

  const textLines = decoded.text.split('\n');
  const dialect = dialectOf(textLines);
  if (dialect.kind === 'no time') return noLog({ code: 'no-time-column', where });
  if (dialect.kind === 'no numbers') return noLog({ code: 'no-readings', where });
  const { delimiter } = dialect;
  const layout = layoutOf(tableOf(decoded.text, delimiter), dialect.columns, delimiter, textLines);
  const { headers, rows } = layout;

  const names = namesOf(headers);
  const sample = spread(rows, SAMPLE);
  const times = timeColumns(sample, names, hints.columns) ?? dialect.columns;
  const used = usedBy(times);
  const others = sample.flatMap((row) => row.filter((_, at) => !used.includes(at)));
  const decimal = hints.decimal ?? decimalOf(others);
  const columns = columnsOf(headers, layout.units, sample, decimal, used);
  const { roles, guessed } = withTemperatureUnit(rolesOf(columns, names, hints), layout.preamble);

  const notFound = columnsNotFound(file, names, hints);
  if (roles.length === 0) {
    const findings = [...notFound, { code: 'no-known-column' as const, headers: names, where }];
    return { kind: 'no log', rows: rows.length, findings };
  }
  const findings: LogFinding[] = [...notFound];
  if (guessed !== null) findings.push({ code: 'temperature-unit-guessed', taken: guessed, where });
  for (const { column, quantity, byRange } of roles)
    if (byRange)
      findings.push({ code: 'quantity-guessed', taken: quantity, where: { file, column: column.name } });
  const headerOffset = used.map((at) => offsetNamed(headers[at] ?? '')).find((it) => it !== null) ?? null;
  const lastLineIsOpen = !decoded.text.endsWith('\n');
  return { kind: 'log', layout, times, headerOffset, decimal, roles, lastLineIsOpen, findings };
}

/** Rows that a guess looks at. */
const SAMPLE = 1000;

/** Columns that the house names and the file does not have. */
const columnsNotFound = (file: string, names: readonly string[], hints: LogHints): LogFinding[] =>
  Object.values(hints.columns)
    .filter((wanted) => findHeader(names, wanted) < 0)
    .map((wanted) => ({ code: 'column-not-found', wanted, headers: names, where: { file } }));
