import { describe, expect, test } from 'vitest';
import { type StateSpaceGiven, stateSpace, windowsOf } from '../../../src/heatloss/stateSpace/index.ts';
import type { HouseRecord } from '../../../src/series/record.ts';
import { drawn, recordOf, simulated } from './simulated.ts';

const CELL = 600;
const DAY_CELLS = 144;

/** Hardly any window, so that the sun, which no record of these has, does not matter. */
const given: StateSpaceGiven = {
  heatLossAsDrawn: 120,
  heatCapacity: null,
  constantGains: 60,
  neighbour: null,
  place: { latitude: 52, longitude: 0 },
  windows: [{ area: 0.02, plane: { tilt: Math.PI / 2, azimuth: null } }],
};

function house(seed: number, days: number) {
  const parameters = drawn(seed);
  parameters[2] = Math.log(0.012);
  return {
    heatLoss: Math.exp(parameters[0]),
    record: recordOf(simulated(parameters, seed, days, CELL)),
  };
}

const assess = (record: HouseRecord, also: Partial<StateSpaceGiven> = {}) =>
  stateSpace(
    record,
    { from: record.grid.start, to: record.grid.start + (record.grid.length - 1) * CELL },
    { ...given, ...also },
  );

const codes = (estimate: ReturnType<typeof assess>) => estimate?.notes.map(({ code }) => code) ?? [];

const whole = house(1, 8);

describe('eight metered days', () => {
  const estimate = assess(whole.record);

  test('tell the heat loss, with an interval that holds it', () => {
    expect(estimate?.heatLossCoefficient.low).toBeLessThan(whole.heatLoss);
    expect(estimate?.heatLossCoefficient.high).toBeGreaterThan(whole.heatLoss);
    // Profiles of such records reach some 10 %, what lies beyond them another 10 %.
    expect(Math.abs((estimate?.heatLossCoefficient.value ?? 0) / whole.heatLoss - 1)).toBeLessThan(0.2);
  });

  test('all count, and the sun is that of an ordinary sky', () => {
    expect(estimate?.notes).toContainEqual({ code: 'whole-days-used', used: 8, leftOut: 0 });
    expect(codes(estimate)).toContain('sun-by-usual-sky');
    expect(codes(estimate)).toContain('gains-allowed-for');
    expect(codes(estimate)).not.toContain('coldest-stretch');
  });

  test('no interval is narrower than what the profile cannot know', () => {
    const { low = 0, high = 0 } = estimate?.heatLossCoefficient ?? {};
    expect(Math.log(high / low) / (2 * 1.96)).toBeGreaterThan(0.05);
  });

  test('the same house in air five degrees warmer on both sides loses the same', () => {
    const warmer = (values: Float64Array) => values.map((it) => it + 5);
    const shifted = assess({
      ...whole.record,
      insideTemperature: warmer(whole.record.insideTemperature),
      outsideTemperature: warmer(whole.record.outsideTemperature),
    });
    // Rounding, carried through a few dozen steps of the search.
    const ratio =
      (shifted?.heatLossCoefficient.value ?? 0) / (estimate?.heatLossCoefficient.value ?? Number.NaN);
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-4);
  });
});

describe('gaps', () => {
  const gappy: HouseRecord = {
    ...whole.record,
    heatingPower:
      whole.record.heatingPower?.slice().fill(Number.NaN, 3 * DAY_CELLS + 40, 3 * DAY_CELLS + 90) ?? null,
    insideTemperature: whole.record.insideTemperature
      .slice()
      .fill(Number.NaN, 5 * DAY_CELLS, 5 * DAY_CELLS + 10),
    outsideTemperature: whole.record.outsideTemperature
      .slice()
      .fill(Number.NaN, 6 * DAY_CELLS, 6 * DAY_CELLS + 6),
  };

  test('a day with a gap in its heat is left out, readings that are missing are passed over', () => {
    const estimate = assess(gappy);
    expect(estimate?.notes).toContainEqual({ code: 'whole-days-used', used: 7, leftOut: 1 });
    expect(estimate?.heatLossCoefficient.low).toBeLessThan(whole.heatLoss);
    expect(estimate?.heatLossCoefficient.high).toBeGreaterThan(whole.heatLoss);
  });

  test('heat in a gap is not taken for no heat: the figure stays', () => {
    const [all, some] = [assess(whole.record), assess(gappy)].map((it) => it?.heatLossCoefficient.value ?? 0);
    // One day of eight taken for unheated would read a tenth lower; the two differ by what a day tells.
    expect(Math.abs(Math.log(some / all))).toBeLessThan(0.06);
  });
});

describe('nothing is claimed', () => {
  test('where no heat was metered', () => {
    expect(assess({ ...whole.record, heatingPower: null })).toBeNull();
  });

  test('of four days', () => {
    const { grid } = whole.record;
    expect(stateSpace(whole.record, { from: grid.start, to: grid.start + 4.9 * 86_400 }, given)).toBeNull();
  });

  test('of the plug of a fridge', () => {
    const fridge = whole.record.insideTemperature.map((_, k) => (k % 5 < 2 ? 100 : 0));
    expect(assess({ ...whole.record, heatingPower: fridge })).toBeNull();
  });

  test('of one heated night', () => {
    const night = whole.record.insideTemperature.map((_, k) =>
      k > 4 * DAY_CELLS && k < 4 * DAY_CELLS + 48 ? 4000 : 0,
    );
    expect(assess({ ...whole.record, heatingPower: night })).toBeNull();
  });

  test('of a counter that was read once a day', () => {
    const heat = whole.record.heatingPower ?? new Float64Array();
    const daily = heat.map((_, k) => {
      const day = heat.subarray(
        Math.floor(k / DAY_CELLS) * DAY_CELLS,
        (Math.floor(k / DAY_CELLS) + 1) * DAY_CELLS,
      );
      return day.reduce((sum, it) => sum + it, 0) / day.length;
    });
    // Read in the middle of my days, not at their ends.
    const noon = daily.map((_, k) => daily[Math.max(0, k - DAY_CELLS / 2)]);
    expect(assess({ ...whole.record, heatingPower: noon })).toBeNull();
  });

  test('of a house as cold as outdoors', () => {
    expect(assess({ ...whole.record, outsideTemperature: whole.record.insideTemperature })).toBeNull();
  });
});

test('of forty days the coldest four weeks are taken, and that is said', () => {
  const { record } = house(2, 40);
  const colder = record.outsideTemperature.map((it, k) => (k < 10 * DAY_CELLS ? it + 3 : it));
  const estimate = assess({ ...record, outsideTemperature: colder });
  expect(estimate?.notes).toContainEqual({ code: 'coldest-stretch', days: 28 });
});

test('a neighbour as warm as the house takes nothing; its share of the loss is not that of the house', () => {
  const weight = 0.3;
  const outside = whole.record.outsideTemperature.map((it) => (it - weight * 20) / (1 - weight));
  const estimate = assess(
    { ...whole.record, outsideTemperature: outside },
    { neighbour: { weight, temperature: 20 }, heatLossAsDrawn: 80 },
  );
  const alone = assess(whole.record);
  expect(estimate?.notes).toContainEqual({ code: 'neighbour-counted', share: weight });
  // The driver comes out the same, so the whole loss does; 0.7 of it is to outside.
  const ratio = (estimate?.heatLossCoefficient.value ?? 0) / (alone?.heatLossCoefficient.value ?? Number.NaN);
  expect(Math.abs(ratio - (1 - weight))).toBeLessThan(0.001);
});

test('windows to outside whose solar transmittance is drawn let the sun in', () => {
  const windows = windowsOf([
    { name: 'Wall', areaM2: 50, uValue: 0.3 },
    { name: 'South', areaM2: 10, uValue: 1.2, gValue: 0.5, orientationDeg: 180 },
    { name: 'To the stair', areaM2: 4, uValue: 1.2, gValue: 0.5, to: 'adjacent' },
  ]);
  expect(windows).toEqual([{ area: 5, plane: { tilt: Math.PI / 2, azimuth: Math.PI } }]);
});
