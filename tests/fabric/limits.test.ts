import { describe, expect, test } from 'vitest';
import { besideLimit, limitKindOf } from '../../src/fabric/limits.ts';
import { exampleLimits } from '../../src/fabric/limitsExample.ts';

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
