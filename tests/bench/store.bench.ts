/** The readings view of one house, from the database to JSON: a year and ten of minutes, idle and beside an import. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Bench } from './bench.ts';
import { YEAR } from './house/inventedHouse.ts';
import { duckdb } from './store/duckdb.ts';
import { ours } from './store/ours.ts';
import { layOut, store } from './store/stored.ts';
import { cases, VIEWS, type Viewed } from './store/views.ts';

const LOGGERS = 8;

const bench: Bench = {
  title: `The readings view: ${LOGGERS} loggers, temperature and humidity every minute (invented)`,
  unit: 'views',
  cases: cases.map(({ name, years }) => ({
    name,
    prepare: (folder) => {
      const input = join(folder, `store of ${years}`);
      const made = { input, units: VIEWS };
      if (existsSync(input)) return made; // by the case before
      mkdirSync(input);
      store(input, { name: 'House of the bench', loggers: LOGGERS, days: years * YEAR });
      layOut(input, { name: 'Imported meanwhile', loggers: LOGGERS, days: YEAR });
      return made;
    },
  })),
  contestants: [ours, ...duckdb],
  account: (made) => {
    const { channels, points, least, greatest } = made as Viewed;
    return `${channels} channels of ${points} intervals, the first from ${least} to ${greatest}`;
  },
  waits: (made) => (made as Viewed).waits,
};
export default bench;
