/** The clock of a file in words that a page can show: how times are written, in which order, in which zone. */
import { readClock } from './clock.ts';
import type { FileZone } from './fileZone.ts';
import type { LogHints } from './log.ts';
import { stampsOf } from './stamps.ts';
import { type TimeColumns, timeOf, usedBy } from './timeColumns.ts';
import type { UnderstoodClock } from './understood.ts';
import { offsetName } from './zoneNamed.ts';

/** @param sample rows from all over the file; the order of day and month is that of the sample */
export function understoodClock(
  sample: readonly (readonly string[])[],
  times: TimeColumns,
  names: readonly string[],
  { by, zone }: FileZone,
  { dateOrder, orderOfOthers }: LogHints,
): UnderstoodClock {
  const stamps = stampsOf(sample.map((row) => timeOf(row, times)));
  const { shown, order, orderBy, offset } = readClock(stamps, null, dateOrder, orderOfOthers);
  const columns = usedBy(times).map((at) => names[at] ?? '');
  const shared = { columns, written: writtenAs(times), order, orderBy };
  const stated = offset.filter((_, i) => !Number.isNaN(shown[i]));
  if (stated.some(Number.isNaN)) return { ...shared, zoneBy: by, zone };
  if (times.kind === 'elapsed') return { ...shared, zoneBy: 'the preamble', zone: offsetName(times.offset) };
  return { ...shared, zoneBy: 'each row', zone: null };
}

function writtenAs(times: TimeColumns): UnderstoodClock['written'] {
  if (times.kind === 'epoch') return times.perSecond === 1 ? 'epoch seconds' : 'epoch milliseconds';
  if (times.kind === 'serial') return `serial days from ${times.from}`;
  if (times.kind === 'elapsed') return times.counts === 'time' ? 'elapsed' : 'sample numbers';
  return 'date and time';
}
