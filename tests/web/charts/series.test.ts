import { describe, expect, test } from 'vitest';
import type { ReadingsAnswer, ThinnedChannel } from '../../../server/api/shapes.ts';
import type { NightCurve } from '../../../src/curves.ts';
import { nightColumns, residualReach, residualTicks, rmsOf } from '../../../web/charts/nightSeries.ts';
import { accountsOf, alone, columnsOf, familiesOf } from '../../../web/charts/readingsSeries.ts';

const curve: NightCurve = {
  date: '2027-02-12',
  sunset: 0,
  sunrise: 50,
  time: [0, 10, 20, 30, 40],
  inside: [18, 17.5, null, 17.1, Number.NaN],
  outside: [Number.NaN, 4, 4, 4, 4],
  fitted: [null, 17.4, 17.3, 17.2, 17.1],
  window: { from: 10, to: 40 },
};

describe('one night', () => {
  test('what is missing is null and never NaN, which would spoil the height of the chart', () => {
    const { inside, outside, fitted } = nightColumns(curve);
    expect(inside).toEqual([18, 17.5, null, 17.1, null]);
    expect(outside[0]).toBeNull();
    expect([...inside, ...outside, ...fitted].some(Number.isNaN)).toBe(false);
  });

  test('a residual is measured less fitted, only where there are both', () => {
    const { residual } = nightColumns(curve);
    expect(residual[1]).toBeCloseTo(0.1, 9);
    expect(residual[3]).toBeCloseTo(-0.1, 9);
    expect([residual[0], residual[2], residual[4]]).toEqual([null, null, null]);
  });

  test('the root mean square of two residuals of 0.1 K is 0.1 K; of none there is none', () => {
    expect(rmsOf([null, 0.1, -0.1])).toBeCloseTo(0.1, 12);
    expect(rmsOf([null, null])).toBeNull();
  });

  test('the residuals have as much room above zero as below, and round marks within it', () => {
    expect(residualReach([0.1, -0.2, null])).toBeCloseTo(0.23, 9);
    expect(residualReach([null, 0.001])).toBeCloseTo(0.0575, 9);
    expect(residualTicks(0.23)).toEqual([-0.2, 0, 0.2]);
    expect(residualTicks(0.0575)).toEqual([-0.05, 0, 0.05]);
    // 1 would stand at the very edge of 1.04
    expect(residualTicks(1.04)).toEqual([-0.5, 0, 0.5]);
  });
});

const channel = (part: Partial<ThinnedChannel>): ThinnedChannel => ({
  file: 'living.csv',
  column: 'T',
  room: 'Living room',
  place: 'inside',
  quantity: 'temperature',
  unit: 'C',
  min: [1, 2],
  max: [3, 4],
  ...part,
});
const answer = (channels: readonly ThinnedChannel[]): ReadingsAnswer => ({
  first: 0,
  last: 20,
  time: [5, 15],
  step: 10,
  channels,
  nights: [],
  stages: [],
  notes: [],
  heating: [],
  leftOut: [],
});

describe('familiesOf', () => {
  test('channels of one quantity share a chart, temperature first', () => {
    const families = familiesOf([
      channel({ quantity: 'power', place: 'heat', room: null }),
      channel({}),
      channel({ place: 'outside', room: null }),
    ]);
    expect(families.map(({ title }) => title)).toEqual(['Temperature', 'Power']);
    expect(families[0].lines.map(({ label, channel: at }) => [label, at])).toEqual([
      ['Living room', 1],
      ['Outside', 2],
    ]);
  });

  test('inside is ember, outside frost, the rest graphite; no two lines of a chart look alike', () => {
    const places = ['inside', 'inside', 'inside', 'outside', 'weather', 'void', 'adjacent'] as const;
    const [{ lines }] = familiesOf(places.map((place, i) => channel({ place, room: `R${i}` })));
    expect(lines.map(({ ink }) => ink)).toEqual([
      'ember',
      'ember',
      'ember',
      'frost',
      'graphite',
      'graphite',
      'graphite',
    ]);
    expect(new Set(lines.map(({ ink, dash }) => `${ink} ${dash.join()}`)).size).toBe(places.length);
  });

  test('only a line inside is solid beside others; one that is alone is always', () => {
    const [both] = familiesOf([channel({}), channel({ place: 'outside', room: null })]);
    expect(both.lines.map(({ dash }) => dash.length > 0)).toEqual([false, true]);
    const [single] = familiesOf([channel({ quantity: 'windSpeed', place: 'weather', room: null })]);
    expect(single.lines[0].dash).toEqual([]);
  });

  test('two loggers of one room are told apart by their files', () => {
    const [{ lines }] = familiesOf([channel({}), channel({ file: 'second.csv' })]);
    expect(lines.map(({ label }) => label)).toEqual([
      'Living room (living.csv, T)',
      'Living room (second.csv, T)',
    ]);
  });
});

describe('columnsOf', () => {
  test('each line is its maxima and its minima over the shared instants', () => {
    const readings = answer([channel({})]);
    expect(columnsOf(readings, familiesOf(readings.channels)[0])).toEqual([
      [5, 15],
      [3, 4],
      [1, 2],
    ]);
  });

  test('a gap stays a gap, and NaN becomes one', () => {
    const readings = answer([channel({ min: [null, 2], max: [Number.NaN, 4] })]);
    const [, most, least] = columnsOf(readings, familiesOf(readings.channels)[0]);
    expect([most, least]).toEqual([
      [null, 4],
      [null, 2],
    ]);
  });
});

describe('alone', () => {
  test('a reading between two gaps is found, so that it can be drawn as a dot', () => {
    expect(alone([1, null, 2, null, 3, 4, null, 5])).toEqual([0, 2, 7]);
  });
});

describe('accountsOf', () => {
  test('the least and the greatest reading of each channel stand in the table', () => {
    const readings = answer([channel({ min: [null, 2], max: [null, 4] })]);
    expect(accountsOf(readings)).toEqual([
      { file: 'living.csv', label: 'Living room', title: 'Temperature', unit: '°C', least: 2, most: 4 },
    ]);
  });

  test('a channel without readings has neither', () => {
    const [account] = accountsOf(answer([channel({ min: [null, null], max: [null, null] })]));
    expect([account.least, account.most]).toEqual([null, null]);
  });
});
