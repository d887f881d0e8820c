import { describe, expect, test } from 'vitest';
import { besideLimit, limitKindOf, limitTableOf } from '../../src/fabric/limits.ts';
import { exampleLimits } from '../../src/fabric/limitsExample.ts';
import { readHouse } from '../../src/houseFile.ts';
import { invented, inventedDesign } from './inventedHouse.ts';

describe('the example set', () => {
  test('has the figures of Approved Document L, volume 1, 2021, Table 4.1, marked as they are known', () => {
    const known = Object.fromEntries(
      exampleLimits.limits.map((it) => [it.kind, [it.transmittance, it.mark]]),
    );
    expect(known).toEqual({
      // READ second-hand: wall, floor, pitched roof, window, door; the rest MEMORY
      roof: [0.16, 'READ'],
      wall: [0.26, 'READ'],
      floor: [0.18, 'READ'],
      'party wall': [0.2, 'MEMORY'],
      window: [1.6, 'READ'],
      'roof window': [1.6, 'MEMORY'],
      rooflight: [2.2, 'MEMORY'],
      door: [1.6, 'READ'],
    });
  });
  test('is dated, and says to check with the local code', () => {
    expect(exampleLimits.dated).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(exampleLimits.note).toContain('check with your local code');
  });
});

describe('an element beside its limit', () => {
  test('shows the limit and how far it is from it, and no verdict', () => {
    const beside = besideLimit(0.2, 'wall', exampleLimits);
    expect(beside?.limit.transmittance).toBe(0.26);
    expect(beside?.difference).toBeCloseTo(-0.06, 12);
    expect(Object.keys(beside ?? {})).toEqual(['limit', 'difference']);
  });
  test('has none beside it where the table has no such kind', () => {
    const edited = { ...exampleLimits, limits: exampleLimits.limits.filter((it) => it.kind !== 'door') };
    expect(besideLimit(1.2, 'door', edited)).toBeNull();
  });
  test.each([
    [{ to: 'outside', glazed: true, buildUp: null }, 'window'],
    [{ to: 'outside', glazed: false, buildUp: { facing: 'up', layers: [] } }, 'roof'],
    [{ to: 'void', glazed: false, buildUp: { facing: 'across', layers: [] } }, 'wall'],
    [{ to: 'outside', glazed: false, buildUp: { facing: 'down', layers: [] } }, 'floor'],
    [{ to: 'ground', glazed: false, buildUp: null }, 'floor'],
    [{ to: 'adjacent', glazed: false, buildUp: null }, 'party wall'],
    [{ to: 'outside', glazed: false, buildUp: null }, null],
  ] as const)('%j counts as a %s', (element, kind) => {
    expect(limitKindOf(element)).toBe(kind);
  });
});

describe('a table given in house.json', () => {
  const given = {
    name: 'Our own',
    dated: '2026-03-01',
    uValues: { wall: 0.21, 'party wall': 0.5, rooflight: 1.7 },
  };
  test('stands instead of the example, with its date, each figure marked as given', () => {
    const table = limitTableOf(invented({ limits: given }));
    expect([table.name, table.dated]).toEqual(['Our own', '2026-03-01']);
    expect(table.limits).toEqual(
      expect.arrayContaining([
        { kind: 'wall', transmittance: 0.21, mark: 'GIVEN', source: 'Our own' },
        { kind: 'party wall', transmittance: 0.5, mark: 'GIVEN', source: 'Our own' },
        { kind: 'rooflight', transmittance: 1.7, mark: 'GIVEN', source: 'Our own' },
      ]),
    );
    expect(table.limits).toHaveLength(3);
  });
  test('says to check with the local code as well, whatever its own note', () => {
    expect(limitTableOf(invented({ limits: given })).note).toMatch(/check with your local code/i);
    const noted = limitTableOf(invented({ limits: { ...given, note: 'For conversions.' } }));
    expect(noted.note).toMatch(/^For conversions\. .*check with your local code/i);
  });
  test('that is left out leaves the example', () => {
    expect(limitTableOf(invented({}))).toBe(exampleLimits);
  });
  test.each([
    [{ ...given, dated: 'last year' }, 'dated'],
    [{ ...given, uValues: { wall: 0 } }, 'wall'],
    [{ ...given, uValues: { walls: 0.2 } }, 'walls'],
    [{ name: 'Undated', uValues: {} }, 'dated'],
  ])('%j is refused at %s', (limits, key) => {
    const reading = readHouse(JSON.stringify({ ...invented({}), limits }));
    const keys = reading.kind === 'problems' ? reading.problems.map((it) => it.where.key) : [];
    expect(keys).toEqual([expect.stringMatching(new RegExp(`${key}$`))]);
  });
});

test('an element is set beside the kind that it states, else beside the one proposed', () => {
  const door = { name: 'Front door', areaM2: 2, uValue: 1.4 };
  const kindOf = (element: object) => inventedDesign({ elements: [element] }).elements[0].limitKind;
  expect(kindOf({ ...door, limitKind: 'door' })).toBe('door');
  expect(kindOf({ ...door, gValue: 0.5, limitKind: 'rooflight' })).toBe('rooflight');
  expect(kindOf({ ...door, gValue: 0.5 })).toBe('window');
  expect(kindOf(door)).toBeNull();
});
