/** One house of 1, 3 and 10 years, and many smaller ones in one file: what they take. Long: run it with ROUNDS=1. */
import { join } from 'node:path';
import type { Bench } from './bench.ts';
import { type Grown, ours, type Taken } from './growth/ours.ts';
import { writeHouse, YEAR } from './house/inventedHouse.ts';

const cases = [
  { houses: 10, loggers: 3, days: 14 },
  { houses: 100, loggers: 3, days: 14 },
  { houses: 1, loggers: 8, days: YEAR },
  { houses: 1, loggers: 8, days: 3 * YEAR },
  { houses: 1, loggers: 8, days: 10 * YEAR },
];

const bench: Bench = {
  title:
    'Growth: loggers of temperature and humidity every minute (invented), brought, looked at, backed up; in brackets, of a processor',
  unit: 'readings',
  cases: cases.map(({ houses, loggers, days }) => ({
    name: `${houses} × ${loggers} loggers × ${days} days`,
    prepare: (folder) => {
      const input = join(folder, `${houses} of ${days}`);
      let units = 0;
      for (let k = 0; k < houses; k++)
        units += writeHouse(join(input, `house-${k}`), { name: `House ${k} (invented)`, loggers, days });
      return { input, units };
    },
  })),
  contestants: [ours],
  account: (made) => {
    const { importing, view, list, backup, file } = made as Grown;
    const told = ({ seconds, processor }: Taken) => `${seconds.toFixed(2)} s (${processor.toFixed(2)})`;
    return [
      `import ${told(importing)}`,
      `first view ${told(view)}`,
      `list ${told(list)}`,
      `backup ${told(backup)}`,
      `file ${(file / 2 ** 20).toFixed(0)} MiB`,
    ].join(' | ');
  },
};
export default bench;
