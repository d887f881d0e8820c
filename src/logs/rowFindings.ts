/** What is to be said of a log's rows, each kind once with its count and first lines. */
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
    else if (!Number.isNaN(times.instants[i]) && rows.values.every((column) => Number.isNaN(column[i])))
      mark(noValue, rows.line[i]);
  }
  const { orderGuessed } = clock;
  return [
    ...counted(all.controls, (it) => ({ code: 'control-bytes', ...it })),
    ...counted(moved, (it) => ({ code: 'columns-moved', ...it, notRead: strangers })),
    ...counted(all.summary, (it) => ({ code: 'summary-left-out', ...it })),
    ...(orderGuessed === null
      ? []
      : [{ code: 'date-order-unknown' as const, taken: orderGuessed, where: { file } }]),
    ...counted(reset, (it) => ({ code: 'clock-reset', ...it })),
    ...counted(noTime, (it) => ({ code: 'rows-left-out', why: 'no time', ...it })),
    ...counted(noValue, (it) => ({ code: 'rows-left-out', why: 'no value', ...it })),
    ...counted(unclear, (it) => ({ code: 'rows-left-out', why: 'ragged', ...it })),
    ...counted(times.missing, (it) => ({ code: 'local-time-missing', timeZone, ...it })),
    ...counted(times.once, (it) => ({ code: 'doubled-hour-once', timeZone, ...it })),
    ...counted(merged.repeated, (it) => ({ code: 'rows-repeated', ...it })),
    ...counted(merged.conflicting, (it) => ({ code: 'values-conflict', ...it })),
    ...counted(merged.outOfOrder, (it) => ({ code: 'rows-out-of-order', ...it })),
    ...roles.flatMap((role, c): LogFinding[] => {
      const column = role.column.name;
      if (dead.has(role)) return [{ code: 'all-zero-column-left-out', where: { file, column } }];
      return Array.from(rows.faults[c], ([value, tally]) => ({
        code: 'sentinels-left-out',
        value,
        ...tally,
        where: { file, line: tally.lines[0], column },
      }));
    }),
  ];
}

type Account = Tally & { readonly where: { readonly file: string; readonly line: number | undefined } };
