/** The values of all columns that have a role, and what was left out of them. */
import type { Layout } from './layout.ts';
import type { LogFinding } from './log.ts';
import type { Decimal } from './numbers.ts';
import type { Role } from './role.ts';
import { startingZeros } from './startingZeros.ts';
import { mark, newTally } from './tally.ts';
import { isAllZero, readValues } from './values.ts';

export interface ColumnValues {
  readonly role: Role;
  /** One per row in SI, NaN where there is none. */
  readonly values: Float64Array;
}

/** Columns of nothing but zeros go where another column of their quantity has readings: no sensor is behind them. */
export function columnValues(
  file: string,
  layout: Layout,
  instants: Float64Array,
  roles: readonly Role[],
  decimal: Decimal,
): { readonly columns: readonly ColumnValues[]; readonly findings: readonly LogFinding[] } {
  const findings: LogFinding[] = [];
  const all = roles.map((role) => ({ role, ...readValues(layout, instants, role, decimal) }));
  const zero = new Set(all.filter(({ role, values }) => isAllZero(values, role.unit)));
  const columns = all.filter(
    (it) =>
      !zero.has(it) || !all.some((other) => other.role.quantity === it.role.quantity && !zero.has(other)),
  );
  for (const { role } of all.filter((it) => !columns.includes(it)))
    findings.push({ code: 'all-zero-column-left-out', where: { file, column: role.column.name } });

  const warm = columns.filter(({ role }) => role.quantity === 'temperature');
  for (const it of warm) {
    const others = warm.filter((other) => other !== it).map(({ values }) => values);
    const tally = it.faults.get(0) ?? newTally();
    for (const row of startingZeros(instants, it.values, others)) {
      mark(tally, layout.lines[row]);
      it.values[row] = Number.NaN;
    }
    if (tally.count > 0) it.faults.set(0, tally);
  }
  for (const { role, faults } of columns)
    for (const [value, { count, lines: at }] of faults)
      findings.push({
        code: 'sentinels-left-out',
        value,
        count,
        lines: at,
        where: { file, line: at[0], column: role.column.name },
      });
  return { columns, findings };
}
