/** Every number of house.json has bounds: a slip of the hand is refused at the border, with its key. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { houseSchema } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { say } from '../../src/words/index.ts';

const layer = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.04 };

function told(changed: object): string[] {
  const reading = readHouse(
    JSON.stringify({
      name: 'Invented house',
      location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
      loggers: [{ file: 'in.csv', place: 'inside' }],
      elements: [{ name: 'Wall', areaM2: 10, buildUp: { layers: [{ ...layer, ...changed }] } }],
    }),
  );
  if (reading.kind === 'house') return [];
  return reading.problems.map((it) => `${it.where.key}: ${say(it).remedy}`);
}

test('every number of house.json has a least and a greatest value', () => {
  const without: string[] = [];
  let numbers = 0;
  const look = (schema: unknown, path: string): void => {
    if (typeof schema !== 'object' || schema === null) return;
    const { type, minimum, exclusiveMinimum, maximum } = schema as Record<string, unknown>;
    if (type === 'number' && !('const' in schema) && !('enum' in schema)) {
      numbers += 1;
      if ((minimum ?? exclusiveMinimum) === undefined || maximum === undefined) without.push(path);
    }
    for (const [key, value] of Object.entries(schema)) look(value, `${path}/${key}`);
  };
  look(z.toJSONSchema(houseSchema, { io: 'input' }), '');
  expect(without).toEqual([]);
  expect(numbers).toBeGreaterThan(50);
});

describe('a thickness', () => {
  const key = 'elements[0].buildUp.layers[0].thicknessMm';
  test.each([
    [0, `${key}: Give a number above 0.`],
    [-5, `${key}: Give a number above 0.`],
    [5e-324, `${key}: Give a number of at least 0.001.`],
    [1e-9, `${key}: Give a number of at least 0.001.`],
    [1e300, `${key}: Give a number of at most 100000.`],
  ])('of %d mm is refused once, with what may stand there', (thicknessMm, problem) => {
    expect(told({ thicknessMm })).toEqual([problem]);
  });
  test('of a foil, or in metres by a slip, is accepted', () => {
    expect(told({ thicknessMm: 0.02 })).toEqual([]);
    expect(told({ thicknessMm: 0.14 })).toEqual([]);
  });
});

test.each([
  { conductivityWmK: 1e300 },
  { conductivityWmK: 5e-324 },
  { densityKgM3: 1e300 },
  { specificHeatJkgK: 5e-324 },
])('%j is refused', (changed) => {
  expect(told(changed)).toHaveLength(1);
});
