/** One set of limits to start from. */
import type { LimitTable } from './limits.ts';

const source = 'Approved Document L, volume 1, 2021 edition (England), Table 4.1';
const read = { mark: 'READ', source: `${source}, second-hand` } as const;
const memory = { mark: 'MEMORY', source } as const;

export const exampleLimits: LimitTable = {
  name: 'New dwellings, England 2021 (an example)',
  // The day of publication is from memory.
  dated: '2021-12-15',
  note: 'An example to edit, with figures read second-hand or from memory: check with your local code.',
  limits: [
    { kind: 'roof', transmittance: 0.16, ...read },
    { kind: 'wall', transmittance: 0.26, ...read },
    { kind: 'floor', transmittance: 0.18, ...read },
    { kind: 'party wall', transmittance: 0.2, ...memory },
    { kind: 'window', transmittance: 1.6, ...read },
    { kind: 'roof window', transmittance: 1.6, ...memory },
    { kind: 'rooflight', transmittance: 2.2, ...memory },
    { kind: 'door', transmittance: 1.6, ...read },
  ],
};
