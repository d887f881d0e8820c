/** What is to be said of a log's rows, each kind once with its count and first lines. */
import { known } from '../series/known.ts';
import type { Clock } from './clock.ts';
import type { RowTimes } from './instants.ts';
import type { LogFinding } from './log.ts';
import type { Merged } from './merge.ts';
import type { AllRows } from './readRows.ts';
import type { Role } from './role.ts';
import { mark, newTally, type Tally } from './tally.ts';

interface RowsRead {
  readonly all: AllRows;
  readonly roles: readonly Role[];
  readonly clock: Clock;
  /** Rows with a clock that had begun anew. */
  readonly resets: ReadonlySet<number>;
  /** The zone in which times without an offset were taken. */
  readonly timeZone: string;
  readonly times: RowTimes;
  /** Columns that no sensor is behind. */
  readonly dead: ReadonlySet<Role>;
  readonly merged: Merged;
}

export function rowFindings(
  file: string,
  { all, roles, clock, resets, timeZone, times, dead, merged }: RowsRead,
): LogFinding[] {
  const { rows, moved, strangers } = all;
  const counted = (tally: Tally, finding: (account: Account) => LogFinding): LogFinding[] =>
    tally.count === 0 ? [] : [finding({ ...tally, where: { file, line: tally.lines[0] } })];

  const reset = newTally();
  const noTime = newTally();
  const noValue = newTally();
  const unclear = newTally();
  for (let i = 0; i < rows.count; i++) {
    if (rows.ragged[i] === 1) mark(unclear, rows.line[i]);
    else if (resets.has(i)) mark(reset, rows.line[i]);
    else if (Number.isNaN(clock.shown[i])) mark(noTime, rows.line[i]);
    else if (!Number.isNaN(times.instants[i]) && !hasValue(rows.values, i)) mark(noValue, rows.line[i]);
  }
  const turned = newTally();
  for (const i of clock.turned) mark(turned, rows.line[i]);
  const conflicts = merged.conflicting.count;
  const collapsed = conflicts >= FEW_CONFLICTS && conflicts > MOST_CONFLICTS * known(times.instants).length;
  const { orderGuessed } = clock;
  return [
    ...counted(all.controls, (it) => ({ code: 'control-bytes', ...it })),
    ...counted(moved, (it) => ({ code: 'columns-moved', ...it, notRead: strangers })),
    ...counted(all.summary, (it) => ({ code: 'summary-left-out', ...it })),
    ...(orderGuessed === null
      ? []
      : [{ code: 'date-order-unknown' as const, taken: orderGuessed, where: { file } }]),
    ...counted(turned, (it) => ({ code: 'dates-contradict', ...it })),
    ...counted(reset, (it) => ({ code: 'clock-reset', ...it })),
    ...counted(noTime, (it) => ({ code: 'rows-left-out', why: 'no time', ...it })),
    ...counted(noValue, (it) => ({ code: 'rows-left-out', why: 'no value', ...it })),
    ...counted(unclear, (it) => ({ code: 'rows-left-out', why: 'ragged', ...it })),
    ...counted(times.missing, (it) => ({ code: 'local-time-missing', timeZone, ...it })),
    ...counted(times.once, (it) => ({ code: 'doubled-hour-once', timeZone, ...it })),
    ...counted(merged.repeated, (it) => ({ code: 'rows-repeated', ...it })),
    ...counted(merged.conflicting, (it) => ({
      code: collapsed ? 'times-collapse' : 'values-conflict',
      ...it,
    })),
    ...counted(merged.outOfOrder, (it) => ({ code: 'rows-out-of-order', ...it })),
    ...roles.flatMap((role, c): LogFinding[] => {
      const column = role.column.name;
      if (dead.has(role)) return [{ code: 'all-zero-column-left-out', where: { file, column } }];
      const other = rows.otherUnits[c];
      return [
        ...Array.from(rows.faults[c], ([value, tally]) => ({
          code: 'sentinels-left-out' as const,
          value,
          ...tally,
          where: { file, line: tally.lines[0], column },
        })),
        ...counted(other?.tally ?? newTally(), ({ where, ...it }) => ({
          code: 'other-unit-left-out',
          said: other?.said ?? '',
          ...it,
          where: { ...where, column },
        })),
      ];
    }),
  ];
}

function hasValue(columns: readonly Float64Array[], row: number): boolean {
  for (const column of columns) if (!Number.isNaN(column[row])) return true;
  return false;
}

/** Share of the rows with a time: exports pasted together conflict here and there, times read in part all along. */
const MOST_CONFLICTS = 0.2;
/** So few conflicts tell nothing of a log, whatever their share. */
const FEW_CONFLICTS = 5;

type Account = Tally & { readonly where: { readonly file: string; readonly line: number | undefined } };
