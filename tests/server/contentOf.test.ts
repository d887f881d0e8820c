/** What the figures of a house rest on: all of house.json but what is words only. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuresOf } from '../../server/store/contentOf.ts';
import { type House, houseSchema } from '../../src/house.ts';
import { sampleFolder } from './serverAtHand.ts';

const house: House = {
  ...houseSchema.parse(JSON.parse(readFileSync(`${sampleFolder}/house.json`, 'utf8'))),
  nights: [{ date: '2027-01-12', used: false, why: 'a door stood open' }],
};
const files = [{ name: 'in.csv', sha256: 'a' }];
const figures = (of: House) => figuresOf(of, files);

const words = fc.record(
  {
    name: fc.string({ minLength: 1, maxLength: 200 }),
    notes: fc.array(fc.record({ at: fc.constant('2027-01-12T20:00'), text: fc.string() })),
    limits: fc.record({
      name: fc.string({ minLength: 1 }),
      dated: fc.constant('2027-01-01'),
      uValues: fc.record({ wall: fc.double({ min: 0.1, max: 2, noNaN: true }) }),
    }),
  },
  { requiredKeys: [] },
);

describe('the hash of what the figures rest on', () => {
  test('is the same whatever the words are', () => {
    fc.assert(fc.property(words, (other) => figures({ ...house, ...other }) === figures(house)));
  });

  /** Every value within, by the keys that lead to it. */
  const leaves = (value: unknown, path: readonly string[]): string[][] =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, it]) => leaves(it, [...path, key]))
      : [[...path]];
  const others = Object.keys(house).filter((key) => !['name', 'notes', 'limits'].includes(key));

  test.each(others)('is another one as soon as anything in “%s” is', (key) => {
    for (const path of leaves(house[key as keyof House], [key])) {
      const changed = structuredClone(house);
      const last = path[path.length - 1];
      const holder = path
        .slice(0, -1)
        .reduce<Record<string, unknown>>(
          (it, step) => it[step] as Record<string, unknown>,
          changed as Record<string, unknown>,
        );
      holder[last] = typeof holder[last] === 'number' ? holder[last] + 1 : `${holder[last]} x`;
      expect([path.join('.'), figures(changed) === figures(house)]).toEqual([path.join('.'), false]);
    }
  });

  test('is another one when a file is, or has another name', () => {
    for (const other of [
      { name: 'in.csv', sha256: 'b' },
      { name: 'room.csv', sha256: 'a' },
    ])
      expect(figuresOf(house, [other])).not.toBe(figures(house));
  });
});
