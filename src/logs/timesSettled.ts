/** Numbers that stand for times, settled by what the file says of them: spreadsheet days, counts from a start. */
import { namesOf } from './column.ts';
import { type DateOrder, midnight } from './dateOrder.ts';
import { type Elapsed, namesElapsed, worthOf } from './elapsed.ts';
import type { Frame } from './frame.ts';
import type { LogFinding, LogHints } from './log.ts';
import { startIn } from './preamble.ts';
import type { SerialFrom } from './serialDays.ts';
import type { Stamp } from './stamp.ts';
import type { TimeColumns } from './timeColumns.ts';
import type { Preamble } from './understood.ts';

export interface Settled {
  /** Null where the file does not say enough. */
  readonly times: TimeColumns | null;
  readonly findings: readonly LogFinding[];
}

export function settled(
  file: string,
  times: TimeColumns,
  frame: Frame,
  sample: readonly (readonly string[])[],
  preamble: Preamble,
  hints: LogHints,
): Settled {
  if (times.kind === 'serial') return serialSettled(file, times, times.from, frame, hints);
  if (times.kind === 'day and part' && times.from !== null)
    return serialSettled(file, times, times.from, frame, hints);
  if (times.kind === 'elapsed') return elapsedSettled(file, times, frame, sample, preamble, hints);
  return { times, findings: [] };
}

/** The system is the house's, else the file's, else the one that gives dates of a logger; 1900 where both do. */
function serialSettled(
  file: string,
  times: Extract<TimeColumns, { kind: 'serial' | 'day and part' }>,
  taken: SerialFrom,
  { preamble, headers }: Frame,
  { serialFrom }: LogHints,
): Settled {
  const says = (year: SerialFrom) =>
    [...preamble, ...headers].some((text) => new RegExp(`\\b${year}\\b`).test(text));
  const known = serialFrom ?? ([1904, 1900] as const).find(says);
  if (known !== undefined) return { times: { ...times, from: known }, findings: [] };
  return { times, findings: [{ code: 'serial-days-guessed', taken, where: { file } }] };
}

function elapsedSettled(
  file: string,
  times: Elapsed,
  { headers }: Frame,
  sample: readonly (readonly string[])[],
  preamble: Preamble,
  hints: LogHints,
): Settled {
  const where = { file };
  const cells = sample.map((row) => row[times.at] ?? '');
  const header = headers[times.at] ?? '';
  const begin = startIn(preamble);
  const worth = worthOf(header, cells, preamble.interval);
  if (begin === null || worth === null) {
    const speaks = begin !== null || namesElapsed(header);
    const names = namesOf(headers);
    return {
      times: null,
      findings: [
        speaks ? { code: 'start-not-told', headers: names, where } : { code: 'no-time-column', where },
      ],
    };
  }
  const { time: start, guessed } = startTime(begin, hints);
  if (Number.isNaN(start)) return { times: null, findings: [{ code: 'no-time-column', where }] };
  const findings: LogFinding[] = guessed ? [{ code: 'date-order-unknown', taken: 'day-first', where }] : [];
  return { times: { ...times, ...worth, start, offset: begin.offset }, findings };
}

/** Local time of the start [s since 1970, as if UTC], in the only order that makes a date of it, else the house's. */
function startTime({ shape, parts: [a, b, c], clock }: Stamp, hints: LogHints) {
  const dates: Readonly<Record<DateOrder, number>> = {
    'day-first': shape === 'year first' ? Number.NaN : midnight(c, b, a),
    'month-first': shape === 'year first' || shape === 'day first' ? Number.NaN : midnight(c, a, b),
    'year-first': shape === 'year first' || shape === 'open' ? midnight(a, b, c) : Number.NaN,
  };
  const possible = (['day-first', 'month-first', 'year-first'] as const).filter(
    (order) => !Number.isNaN(dates[order]),
  );
  const told = [hints.dateOrder, hints.orderOfOthers].find((order) => order && possible.includes(order));
  const order = told ?? possible[0];
  return {
    time: order === undefined ? Number.NaN : dates[order] + clock,
    guessed: told === undefined && possible.length > 1,
  };
}
