/** What a posting of three rows costs into houses that have much already: it should be what it touches. */
import { join } from 'node:path';
import { median } from 'simple-statistics';
import type { Bench } from './bench.ts';
import { writeHouse, YEAR } from './house/inventedHouse.ts';
import { ours, POSTINGS, type Posted } from './posting/ours.ts';

const cases = [
  { loggers: 3, days: 14, step: 10 },
  { loggers: 8, days: 14, step: 10 },
  { loggers: 3, days: YEAR, step: 10 },
  { loggers: 8, days: YEAR, step: 10 },
  { loggers: 3, days: YEAR, step: 1 },
  { loggers: 8, days: YEAR, step: 1 },
];

const bench: Bench = {
  title:
    'Postings of 3 rows onto stored houses (invented); processor seconds, the first posting and the usual one',
  unit: 'postings',
  cases: cases.map(({ loggers, days, step }) => ({
    name: `${loggers} loggers × ${days} days, a reading each ${step} min`,
    prepare: (folder) => {
      const input = join(folder, `${loggers} each ${step} for ${days}`);
      writeHouse(input, { name: 'House of the bench', loggers, days }, step);
      return { input, units: POSTINGS };
    },
  })),
  contestants: [ours],
  account: (made) => {
    const { read, stored, log, undoing } = made as Posted;
    const told = (of: readonly number[], format: (of: number) => string) =>
      `${format(of[0])}, then ${format(median(of.slice(1)))}`;
    const seconds = (of: number) => of.toFixed(3);
    return [
      `read ${told(read, seconds)}`,
      `stored ${told(stored, seconds)}`,
      `written ${told(log, (bytes) => `${Math.round(bytes / 1024)} KiB`)}`,
      `undone ${seconds(undoing)}`,
    ].join(' | ');
  },
};
export default bench;
