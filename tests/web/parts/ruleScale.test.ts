import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeOn, ruleScale } from '../../../src/sheet/drawing/ruleScale.ts';

const longs = (values: readonly number[]) =>
  ruleScale(values).graduations.filter(({ length }) => length === 'long');
const writtenOn = (values: readonly number[]) => longs(values).map(({ text }) => text);

test('a ruler from 88 to 189 is graduated in twenties, with four fives in each', () => {
  const { from, to, graduations } = ruleScale([88.4, 129.2, 188.9, 103]);
  expect([from, to]).toEqual([80, 200]);
  expect(writtenOn([88.4, 129.2, 188.9, 103])).toEqual(['80', '100', '120', '140', '160', '180', '200']);
  expect(graduations.slice(0, 5).map(({ value }) => value)).toEqual([80, 85, 90, 95, 100]);
});

test('tens carry ten ones, the fifth of them longer', () => {
  const { graduations } = ruleScale([40, 100]);
  expect(graduations.slice(0, 11).map(({ length }) => length)).toEqual([
    'long',
    'short',
    'short',
    'short',
    'short',
    'middle',
    'short',
    'short',
    'short',
    'short',
    'long',
  ]);
});

test('figures have the decimals of their division and no more', () => {
  expect(writtenOn([0.86, 1.83, 1])[0]).toBe('0.8');
  expect(writtenOn([0.141, 0.152])).toContain('0.150');
});

test('one value alone still has a ruler around it', () => {
  const scale = ruleScale([103]);
  expect(placeOn(scale, 103)).toBeGreaterThan(0);
  expect(placeOn(scale, 103)).toBeLessThan(1);
});

const value = fc.double({ min: 0.001, max: 1e6, noNaN: true });

test('every value lies on the ruler, whatever the values', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 8 }), (values) => {
      const scale = ruleScale(values);
      for (const it of values) {
        expect(placeOn(scale, it)).toBeGreaterThanOrEqual(0);
        expect(placeOn(scale, it)).toBeLessThanOrEqual(1);
      }
    }),
  );
});

test('a ruler begins and ends at a long graduation, rises, and is written on at most ten times', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 8 }), (values) => {
      const { graduations } = ruleScale(values);
      expect(graduations[0].length).toBe('long');
      expect(graduations.at(-1)?.length).toBe('long');
      expect(graduations.every(({ value: it }, i) => i === 0 || it > graduations[i - 1].value)).toBe(true);
      // Eight divisions, and one more on either side where the ends are rounded outward.
      expect(longs(values).length).toBeLessThanOrEqual(11);
      expect(new Set(longs(values).map(({ text }) => text)).size).toBe(longs(values).length);
    }),
  );
});

test('a narrow screen keeps at most five figures, the first among them', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 8 }), (values) => {
      const kept = longs(values).filter(({ always }) => always);
      expect(kept.length).toBeLessThanOrEqual(5);
      expect(kept[0].value).toBe(longs(values)[0].value);
    }),
  );
});

test('positive values have no ruler that goes below zero', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 8 }), (values) => {
      expect(ruleScale(values).from).toBeGreaterThanOrEqual(0);
    }),
  );
});
