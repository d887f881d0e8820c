/** Ours: told nothing but the time zone, it finds the layout itself and accounts for every row. */
import { readFileSync } from 'node:fs';
import { readLog } from '../../../src/logs/index.ts';
import type { Contestant } from '../bench.ts';
import { layoutNamed } from './layouts.ts';

export const ours: Contestant = {
  name: 'ours (readLog)',
  ready: async (kase) => {
    const { timeZone } = layoutNamed(kase);
    return async (input) => {
      const reading = readLog('log.csv', readFileSync(input), { timeZone, clockOffset: 0, columns: {} });
      if (reading.kind !== 'read') throw new Error(JSON.stringify(reading.findings));
      return reading.channels;
    };
  },
};
