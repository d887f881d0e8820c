import { expect, test } from 'vitest';
import { assessRecord } from '../../../src/assess.ts';
import { provingRecords } from '../records/cache.ts';
import { timeConstantError } from './timeConstantError.ts';

test.each(['timber cabin', 'extension, neighbour logged'])(
  '%s: fitted again over its own windows a record gives its own time constant',
  (type) => {
    const [{ house, record }] = provingRecords(type, 200);
    const { stages, neighbour } = assessRecord(house, record);
    for (const stage of stages)
      expect(Math.abs(timeConstantError(stage, record, neighbour) ?? 0)).toBeLessThan(1e-9);
  },
);
