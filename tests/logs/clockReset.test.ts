/** A clock that began anew after a change of battery. */
import { describe, expect, test } from 'vitest';
import { resetRows } from '../../src/logs/clockReset.ts';

const at = (date: string) => Date.parse(`${date}Z`) / 1000;
const hourly = (date: string, count: number) => Array.from({ length: count }, (_, i) => at(date) + i * 3600);
const reset = (...times: readonly (readonly number[])[]) => resetRows(Float64Array.from(times.flat()));

const record = hourly('2026-01-01T00:00', 500);

describe('resetRows', () => {
  test('names one row of another decade, wherever it stands', () => {
    expect(reset([at('2000-01-01T00:00')], record)).toEqual([0]);
    expect(reset(record, [at('2000-01-01T00:00')])).toEqual([500]);
    expect(reset(record.slice(0, 7), [at('2000-01-01T00:00')], record.slice(7))).toEqual([7]);
  });

  test('names a run of rows, those without a time passed over', () => {
    const run = [at('2000-01-01T00:00'), Number.NaN, at('2000-01-01T01:00'), at('2000-01-01T02:00')];
    expect(reset(record.slice(0, 9), run, record.slice(9))).toEqual([9, 11, 12]);
  });

  test('names runs of several resets', () => {
    const run = hourly('2000-01-01T00:00', 3);

    expect(reset(record.slice(0, 2), run, record.slice(2), run)).toEqual([2, 3, 4, 503, 504, 505]);
  });

  test('leaves a record alone that is one in twenty or more', () => {
    expect(reset(hourly('2000-01-01T00:00', 26), record)).toHaveLength(26);
    expect(reset(hourly('2000-01-01T00:00', 27), record)).toEqual([]);
  });

  test('leaves alone what lies within two years', () => {
    expect(reset([at('2024-06-01T00:00')], record)).toEqual([]);
  });

  test('leaves alone an older record that goes on for longer than 90 days', () => {
    const daily = Array.from({ length: 20 }, (_, i) => at('2020-01-01T00:00') + i * 5 * 86400);
    expect(reset(daily, record)).toEqual([]);
  });

  test('leaves a short file alone', () => {
    expect(reset([at('2000-01-01T00:00')], record.slice(0, 19))).toEqual([]);
    expect(reset([at('2000-01-01T00:00')], record.slice(0, 20))).toEqual([0]);
  });
});
