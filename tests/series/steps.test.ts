import { describe, expect, test } from 'vitest';
import { COARSE_TEMPERATURE } from '../../src/logs/doubts/index.ts';
import { gapsOf, isIrregular, resolutionOf, spacingOf } from '../../src/series/steps.ts';
import { every, onlyReadings } from '../logs/doubts/series.ts';

describe('what a channel can show', () => {
  test('is its smallest step, whatever the unit was before', () => {
    expect(resolutionOf(Float64Array.from([20, 20.5, 20, 21, 22]))).toBe(0.5);
    expect(resolutionOf(Float64Array.from([20.1, 20.3, 20.2, 20.1]))).toBeCloseTo(0.1, 12);
    // one value may come twice with another last bit: 68 °F by two ways
    expect(resolutionOf(Float64Array.from([20, 20 + 4e-15, 20.5]))).toBeCloseTo(0.5, 12);
    expect(resolutionOf(Float64Array.from([4e-4, 4.01e-4, 4.5e-4]))).toBeCloseTo(1e-6, 15);
    expect(resolutionOf(Float64Array.from([20, 20, 20]))).toBe(0);
  });

  test('is coarse with half degrees Celsius and with whole degrees Fahrenheit, not with a quarter', () => {
    const steps = [0.5, 5 / 9, 0.25].map((step) => resolutionOf(Float64Array.from([20, 20 + step])));
    expect(steps.map((step) => step >= COARSE_TEMPERATURE)).toEqual([true, true, false]);
  });
});

describe('how the readings lie in time', () => {
  const day = every(10, 'temperature', Array(144).fill(20));

  test('every ten minutes without a gap', () => {
    expect(spacingOf(day.time)).toBe(600);
    expect(gapsOf(day.time)).toEqual({ count: 0, longest: 0, at: [] });
    expect(isIrregular(day.time)).toBe(false);
  });

  test('the spacing is that of most steps, however the first ones are', () => {
    expect(spacingOf(Float64Array.of(0, 7, 20, 620, 1220, 1820))).toBe(600);
    expect(spacingOf(Float64Array.of(0, 10, 30, 60, 100, 150))).toBe(30);
  });

  test('gaps are counted from more than an hour on, by the reading before them', () => {
    // 20 to 23 missing: 50 minutes from 19 to 24; 60 to 70: 2 h; 100 to 129: 5 h 10 min
    const kept = onlyReadings(
      day,
      (i) => !((i >= 20 && i < 24) || (i >= 60 && i <= 70) || (i >= 100 && i < 130)),
    );
    expect(spacingOf(kept.time)).toBe(600);
    expect(gapsOf(kept.time)).toEqual({ count: 2, longest: 18_600, at: [55, 84] });
    expect(isIrregular(kept.time)).toBe(false);
  });

  test('of many gaps the first five are named', () => {
    const kept = onlyReadings(day, (i) => i % 16 < 8);
    expect(gapsOf(kept.time)).toEqual({
      count: 8,
      longest: 5400,
      at: [7, 15, 23, 31, 39],
    });
  });

  test('readings three hours apart have no gap until one is missing twice', () => {
    const slow = every(180, 'temperature', Array(40).fill(20));
    expect(gapsOf(slow.time).count).toBe(0);
    const kept = onlyReadings(slow, (i) => i !== 10 && i !== 20 && i !== 21);
    expect(gapsOf(kept.time)).toEqual({ count: 1, longest: 32_400, at: [18] });
  });

  test('a sensor that speaks when something changes is irregular; one that sometimes fails is not', () => {
    const chatty = { ...day, time: day.time.map((t, i) => t + (i % 3 === 0 ? 170 : 0)) };
    expect(isIrregular(chatty.time)).toBe(true);
    const failing = onlyReadings(day, (i) => i % 3 !== 0);
    expect(isIrregular(failing.time)).toBe(false);
  });

  test('one reading and none have neither spacing nor gaps', () => {
    for (const time of [[], [20]].map((it) => Float64Array.from(it))) {
      expect(spacingOf(time)).toBe(0);
      expect(gapsOf(time)).toEqual({ count: 0, longest: 0, at: [] });
      expect(isIrregular(time)).toBe(false);
    }
  });
});
