/** Fitting nights: time constant and start of each, driven by the outdoor temperature of every ten minutes. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Bench } from './bench.ts';
import { inventedNights, TRUE_HOURS } from './nights/inventedNights.ts';
import { ours } from './nights/ours.ts';
import { peers } from './nights/peer.ts';

const bench: Bench = {
  title: 'Fitting cooling nights (invented), ten minutes apart, ten hours each',
  unit: 'nights',
  cases: [
    {
      name: 'two thousand nights of a house of 40 h',
      prepare: (folder) => {
        const input = join(folder, 'nights.json');
        const nights = inventedNights(2000);
        writeFileSync(input, JSON.stringify(nights));
        return { input, units: nights.length };
      },
    },
  ],
  contestants: [ours, ...peers],
  account: (made) => {
    const hours = (made as readonly number[]).map((it) => it / 3600);
    const mean = hours.reduce((sum, it) => sum + it, 0) / hours.length;
    const off = Math.max(...hours.map((it) => Math.abs(it - TRUE_HOURS)));
    return `mean ${mean.toFixed(4)} h, at most ${off.toFixed(3)} h from ${TRUE_HOURS} h`;
  },
};
export default bench;
