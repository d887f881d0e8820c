/** Many exports of one logger as one series. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLog } from '../../src/logs/index.ts';
import { channelOf } from '../../src/record/index.ts';
import { join } from '../../src/record/join.ts';

const START = Date.UTC(2027, 0, 10);
const csv = (from: number, values: readonly number[]) =>
  [
    'Time,Temperature (°C)',
    ...values.map((value, i) => `${new Date(START + (from + i) * 600_000).toISOString()},${value}`),
  ].join('\n');

test('laid end to end where they can be, they give what joining one after the other gives', () => {
  const values = fc.array(fc.integer({ min: 18, max: 20 }), { minLength: 1, maxLength: 6 });
  const piece = fc.tuple(fc.integer({ min: 0, max: 40 }), values);
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 8 }), fc.boolean(), (pieces, isInOrder) => {
      const all = isInOrder ? pieces.toSorted(([a], [b]) => a - b) : pieces;
      const exports = all.map(([from, values], k) => {
        const bytes = new TextEncoder().encode(csv(from, values));
        const reading = readLog(`${k}.csv`, bytes, { timeZone: 'UTC', clockOffset: 0, columns: {} });
        if (reading.kind !== 'read') throw new Error(reading.kind);
        return reading;
      });
      const [first, ...later] = exports.map(({ channels }) => channels[0]);
      const oneByOne = later.reduce((joined, more) => join(joined, more).channel, first);
      expect(channelOf(exports, 'temperature', { file: '0.csv', place: 'inside' }, [])).toEqual(oneByOne);
    }),
    { numRuns: 40 },
  );
});
