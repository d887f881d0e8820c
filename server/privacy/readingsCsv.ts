/** Stored readings as the CSV of a nameless house. */
import { perReportedUnit } from '../../src/report.ts';
import type { Reading } from '../store/reading.ts';
import { type NamelessFile, TIME } from './nameless.ts';

/** Of figures: more are noise of the way they were reckoned. */
const DIGITS = 9;

/** No cell can be taken for a formula: headings are ours, the rest are times and figures. */
export function readingsCsv({ columns }: NamelessFile, reading: Reading): string {
  const rows = new Map<number, string[]>();
  columns.forEach(({ channel: { number, quantity, first, last } }, i) => {
    const scale = perReportedUnit[quantity] ?? 1;
    for (const { time, value } of reading.readings(number, first, last))
      for (let k = 0; k < time.length; k++) {
        const row = rows.get(time[k]) ?? columns.map(() => '');
        row[i] = String(Number((value[k] / scale).toPrecision(DIGITS)));
        rows.set(time[k], row);
      }
  });
  const lines = [...rows].sort(([a], [b]) => a - b).map(([time, cells]) => [stamp(time), ...cells].join(','));
  return `${[[TIME, ...columns.map(({ heading }) => heading)].join(','), ...lines].join('\r\n')}\r\n`;
}

const stamp = (seconds: number) => new Date(seconds * 1000).toISOString().replace(/\.\d+Z$/, 'Z');
