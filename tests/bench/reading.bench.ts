/** Reading one log: a year of minutes, two channels, in several layouts. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Bench } from './bench.ts';
import { duckdb } from './reading/duckdb.ts';
import { layouts } from './reading/layouts.ts';
import { naive } from './reading/naive.ts';
import { ours } from './reading/ours.ts';
import type { Series } from './reading/series.ts';
import { MINUTES, START, yearOfMinutes } from './reading/yearOfMinutes.ts';

const bench: Bench = {
  title: 'Reading a log: a year of minutes, two channels (invented)',
  unit: 'rows',
  cases: layouts.map((layout) => ({
    name: layout.name,
    prepare: (folder) => {
      const input = join(folder, 'log.csv');
      writeFileSync(input, layout.write(yearOfMinutes()));
      return { input, units: MINUTES };
    },
  })),
  contestants: [ours, naive, duckdb],
  account: (made) => {
    const channels = made as readonly Series[];
    const wrong = channels[0].time.reduce((n, time, i) => (time === START + 60 * i ? n : n + 1), 0);
    const [temperature] = channels.map(({ value }) => value.reduce((sum, it) => sum + it, 0) / value.length);
    const readings = channels.reduce((sum, { value }) => sum + value.length, 0);
    return `${readings} readings, ${wrong} at a wrong instant, mean ${temperature.toFixed(6)} °C`;
  },
};
export default bench;
