/** Ours: beside the time constant it gives its error with autocorrelation counted. */
import { readFileSync } from 'node:fs';
import { fitDecay } from '../../../src/cooling/index.ts';
import type { Contestant } from '../bench.ts';
import type { InventedNight } from './inventedNights.ts';

export const ours: Contestant = {
  name: 'ours (fitDecay)',
  ready: async () => async (input) => {
    const nights: InventedNight[] = JSON.parse(readFileSync(input, 'utf8'));
    return nights.map(({ time, indoor, outdoor }) => {
      const fit = fitDecay(Float64Array.from(time), Float64Array.from(indoor), Float64Array.from(outdoor));
      return fit.kind === 'fitted' ? fit.timeConstant.value : Number.NaN;
    });
  },
};
