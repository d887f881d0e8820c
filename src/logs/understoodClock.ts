/** The clock of a file in words that a page can show: how times are written, in which order, in which zone. */
import type { Clock } from './clock.ts';
import type { FileZone } from './fileZone.ts';
import { type TimeColumns, usedBy } from './timeColumns.ts';
import type { UnderstoodClock } from './understood.ts';
import { offsetName } from './zoneNamed.ts';

/** @param sampled the clock of rows from all over the file, whose order of day and month is told for the whole */
export function understoodClock(
  { shown, order, orderBy, offset }: Clock,
  times: TimeColumns,
  names: readonly string[],
  { by, zone }: FileZone,
): UnderstoodClock {
  const columns = usedBy(times).map((at) => names[at] ?? '');
  const shared = { columns, written: writtenAs(times), order, orderBy };
  const stated = offset.filter((_, i) => !Number.isNaN(shown[i]));
  if (stated.some(Number.isNaN)) return { ...shared, zoneBy: by, zone };
  if (times.kind === 'elapsed') return { ...shared, zoneBy: 'the preamble', zone: offsetName(times.offset) };
  return { ...shared, zoneBy: 'each row', zone: null };
}

const epochs = {
  1: 'epoch seconds',
  1e3: 'epoch milliseconds',
  1e6: 'epoch microseconds',
  1e9: 'epoch nanoseconds',
} as const;

function writtenAs(times: TimeColumns): UnderstoodClock['written'] {
  if (times.kind === 'epoch') return epochs[times.perSecond];
  if (times.kind === 'day and part' && times.from !== null) return `serial days from ${times.from}`;
  if (times.kind === 'serial') return `serial days from ${times.from}`;
  if (times.kind === 'elapsed') return times.counts === 'time' ? 'elapsed' : 'sample numbers';
  return 'date and time';
}
