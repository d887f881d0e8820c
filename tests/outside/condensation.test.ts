/**
 * Interstitial condensation worked by hand. COMPUTED throughout: no example of ISO 13788 could be read. Every
 * expected figure follows from the working beside it, with the standard's formulas only:
 *   θ = θi - R/RT·(θi - θe);  psat = 610.5·exp(17.269θ/(237.3 + θ)), 21.875 and 265.5 below 0 °C;
 *   g = 2e-10·Δp/sd
 */
import { describe, expect, test } from 'vitest';
import { vapourPressure } from '../../src/air/index.ts';
import type { MonthOfAir } from '../../src/fabric/moisture/climate.ts';
import { moistureYear } from '../../src/fabric/moisture/moisture.ts';

const day = 86_400;
const surfaces = { inside: 0.13, outside: 0.04 };
const layer = (name: string, resistance: number, vapourThickness: number) => ({
  name,
  resistance,
  vapourThickness,
});

/** θi, φi, θe, φe */
type Air = readonly [number, number, number, number];
const month = ([inside, humidity, outside, outsideHumidity]: Air, at: number, days: number): MonthOfAir => ({
  month: at,
  duration: days * day,
  insideTemperature: inside,
  outsideTemperature: outside,
  insidePressure: vapourPressure(inside, humidity),
  outsidePressure: vapourPressure(outside, outsideHumidity),
});
/** A year of these months, the rest of it like the last one. */
const yearOf = (...airs: readonly Air[]) =>
  [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days, at) =>
    month(airs[Math.min(at, airs.length - 1)], at, days),
  );

describe('insulation inside a tight outer layer, a cold January and a dry rest of the year', () => {
  // Layers: R 0.25, sd 0.5 | R 0.05, sd 5. RT = 0.13 + 0.25 + 0.05 + 0.04 = 0.47.
  const section = { surfaces, layers: [layer('insulation', 0.25, 0.5), layer('outer board', 0.05, 5)] };
  const { months, outcome, planes, wettest } = moistureYear(
    section,
    yearOf([20, 0.6, 0, 0.8], [20, 0.3, 15, 0.5]),
  );

  test('has one plane between its surfaces, at 0.38 m²K/W and 0.5 m of still air', () => {
    expect(planes).toHaveLength(3);
    expect(planes[1].resistance).toBeCloseTo(0.38, 12);
    expect(planes[1]).toMatchObject({ inner: 0, outer: 1, vapourThickness: 0.5 });
  });
  test('is 3.830 °C and 803.16 Pa at the plane in January', () => {
    // 20 - 0.38/0.47·20 = 3.8298; 610.5·exp(17.269·3.8298/241.1298) = 803.16
    expect(months[0].temperature[1]).toBeCloseTo(3.8298, 4);
    expect(months[0].saturation[1]).toBeCloseTo(803.16, 2);
    expect(months[0].pressure[1]).toBeCloseTo(803.16, 2);
  });
  test('gains 0.6080 kg/m² in January', () => {
    // pi = 0.6·2336.95 = 1402.17; pe = 0.8·610.5 = 488.4
    // in 2e-10·(1402.17 - 803.16)/0.5 = 2.39604e-7; out 2e-10·(803.16 - 488.40)/5 = 0.12590e-7 kg/(m²s)
    // (2.39604e-7 - 0.12590e-7)·31·86400 = 0.60803
    expect(months[0].month).toBe(0);
    expect(months[0].gained[1]).toBeCloseTo(0.60803, 5);
    expect(wettest).toEqual({ plane: 1, mass: months[0].mass[1] });
  });
  test('is dry after 14.6 days of February, and lets vapour through for the rest of it', () => {
    // plane 20 - 0.38/0.47·5 = 15.9574 °C, 1812.35 Pa; pi = 0.3·2336.95 = 701.09; pe = 0.5·1704.41 = 852.20
    // in 2e-10·(701.09 - 1812.35)/0.5 = -4.44504e-7; out 2e-10·(1812.35 - 852.20)/5 = 0.38406e-7
    // dry after 0.60803/4.82910e-7 = 1.25910e6 s = 14.5729 days
    // then 2e-10·(701.09 - 852.20)/5.5 = -5.4952e-9 for 13.4271 days
    // in: -4.44504e-7·1.25910e6 - 5.4952e-9·1.16010e6 = -0.56605; out: 0.38406e-7·… - … = 0.04198
    expect(months[1].mass[1]).toBe(0);
    expect(months[1].inflow).toBeCloseTo(-0.56605, 5);
    expect(months[1].outflow).toBeCloseTo(0.04198, 5);
    expect(outcome).toBe('dries out');
  });
});

test('two planes of the same wall condense at once, each its own share', () => {
  // Three layers of R 0.2 with sd 0.2, 1 and 3. RT = 0.77; 20 °C and 60 % inside, -5 °C and 80 % outside.
  // planes 20 - 25·0.33/0.77 = 9.2857 °C, 1169.79 Pa; 20 - 25·0.53/0.77 = 2.7922 °C, 746.29 Pa
  // pi 1402.17, pe 0.8·610.5·exp(-21.875·5/260.5) = 320.94
  // first  2e-10·((1402.17 - 1169.79)/0.2 - (1169.79 - 746.29)/1) = 1.47680e-7 kg/(m²s)
  // second 2e-10·((1169.79 - 746.29)/1 - (746.29 - 320.94)/3) = 0.56344e-7 kg/(m²s)
  const layers = [layer('a', 0.2, 0.2), layer('b', 0.2, 1), layer('c', 0.2, 3)];
  const [january] = moistureYear({ surfaces, layers }, yearOf([20, 0.6, -5, 0.8], [20, 0.3, 15, 0.5])).months;
  expect(january.gained[1] / (31 * day)).toBeCloseTo(1.4768e-7, 11);
  expect(january.gained[2] / (31 * day)).toBeCloseTo(0.56344e-7, 11);
});

test('insulation of 1 m²K/W is looked at in four strips of 0.25', () => {
  // ISO 13788:2012 (MEMORY): layers above 0.25 m²K/W are cut into strips of at most that.
  const { planes } = moistureYear(
    { surfaces, layers: [layer('wool', 1, 0.1), layer('board', 0.05, 1)] },
    yearOf([20, 0.5, 10, 0.7]),
  );
  expect(planes.map((it) => [it.inner, it.outer])).toEqual([
    [0, 0],
    [0, 0],
    [0, 0],
    [0, 0],
    [0, 1],
    [1, 1],
  ]);
  expect(planes[2].resistance).toBeCloseTo(0.13 + 0.5, 12);
  expect(planes[2].vapourThickness).toBeCloseTo(0.05, 12);
});
