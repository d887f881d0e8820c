/** Whether the rows of a log are plain enough to be scanned, and how. */
import { dateShapeOf, type ScanPlan, type ScanTime } from './scan/index.ts';
import type { TimeColumns } from './timeColumns.ts';
import type { UnderstoodLog } from './understand.ts';

/** Null where times or cells are written in a way that only the reader of cells knows. */
export function scanPlanOf(log: UnderstoodLog): ScanPlan | null {
  const { mayHoldControls, delimiter, decimal, frame, times, roles, sample } = log;
  const width = frame.headers.length;
  const time = timeOf(times, sample);
  if (mayHoldControls || time === null || sample.length === 0) return null;
  if (sample.filter((row) => row.length === width).length < PLAIN * sample.length) return null;
  return {
    delimiter,
    quotes: delimiter !== 'blanks',
    decimal,
    width,
    time,
    columns: roles.map(({ column }) => column.at),
  };
}

function timeOf(times: TimeColumns, sample: UnderstoodLog['sample']): ScanTime | null {
  if (times.kind === 'epoch') {
    const { perSecond } = times;
    return perSecond === 1 || perSecond === 1000 ? { ...times, perSecond } : null;
  }
  if ((times.kind !== 'stamp' && times.kind !== 'date and time') || times.half !== undefined) return null;
  const shape = dateShapeOf(sample[0]?.[times.at] ?? '');
  return shape && { ...times, shape };
}

/** Share of rows that must be plain, for handing rows over one by one costs more than reading all as cells. */
const PLAIN = 0.9;
