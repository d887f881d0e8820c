import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Grid } from '../../src/series/grid.ts';
import { meterPower } from '../../src/series/meterPower.ts';

const f64 = (...values: number[]) => Float64Array.from(values);
const grid: Grid = { start: 1_800_000_000, step: 600, length: 12 };
const { start } = grid;

test('a meter that gains 1.2 MJ in ten minutes shows 2 kW', () => {
  const { power, resets } = meterPower(f64(start - 300, start + 300), f64(5e9, 5e9 + 1.2e6), grid, 3600);
  expect(power[0]).toBeCloseTo(2000, 6);
  expect(resets).toBe(0);
});

test('the energy in the cells is what the meter gained, however it was read', () => {
  const gains = fc.array(
    fc.record({
      spacing: fc.integer({ min: 10, max: 1800 }),
      gain: fc.double({ min: 0, max: 1e7, noNaN: true }),
    }),
    { minLength: 1, maxLength: 60 },
  );
  fc.assert(
    fc.property(gains, (some) => {
      const end = start - 300 + grid.length * 600;
      let at = start - 300;
      let shown = 1e9;
      const time = [at];
      const energy = [shown];
      for (const { spacing, gain } of some) {
        at += spacing;
        shown += gain;
        if (at >= end) break;
        time.push(at);
        energy.push(shown);
      }
      time.push(end);
      energy.push(shown);
      const { power } = meterPower(
        Float64Array.from(time),
        Float64Array.from(energy),
        grid,
        Number.POSITIVE_INFINITY,
      );
      const inCells = power.reduce((sum, it) => sum + it * grid.step, 0);
      // a meter at 1e9 J is exact to 1e-7 J
      expect(Math.abs(inCells - (shown - 1e9))).toBeLessThan(1e-3);
    }),
  );
});

test('a meter that steps down was reset: a gap, counted, and the readings on either side stay', () => {
  const time = f64(start - 300, start + 300, start + 900, start + 1500);
  const { power, resets } = meterPower(time, f64(9e6, 9.6e6, 0, 0.6e6), grid, 3600);
  expect(resets).toBe(1);
  expect(power[0]).toBeCloseTo(1000, 6);
  expect(power[1]).toBeNaN();
  expect(power[2]).toBeCloseTo(1000, 6);
});

test('readings too far apart do not tell when the energy went', () => {
  const { power, resets } = meterPower(f64(start - 300, start + 6900), f64(0, 7.2e6), grid, 3600);
  expect(power.every(Number.isNaN)).toBe(true);
  expect(resets).toBe(0);
});

test('a meter that stands still shows no power', () => {
  expect(meterPower(f64(start - 300, start + 300), f64(5, 5), grid, 3600).power[0]).toBe(0);
});

test('unequal lengths are a mistake in the call', () => {
  expect(() => meterPower(f64(1, 2), f64(1), grid, 600)).toThrow(RangeError);
});
