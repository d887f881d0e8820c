import { describe, expect, test } from 'vitest';
import { heatThenCool } from '../../src/heatloss/index.ts';
import { gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { HOUR, midnight, nightsOf } from '../cooling/nightsAtHand.ts';

const HEAT_LOSS = 120; // [W/K]
const CAPACITY = 15e6; // [J/K]

/** An invented one-node house, dT/dt = (P + gains + aperture·sun − H·(T − Te)) / C, stepped by one minute. */
function oneNode(
  days: number,
  power: (hour: number, day: number) => number,
  aperture = 0,
  gains = 0,
): HouseRecord {
  const grid = gridOver(midnight + 12 * HOUR, midnight + (12 + days * 24) * HOUR);
  const instants = Float64Array.from({ length: grid.length }, (_, i) => timeAt(grid, i));
  const clock = (t: number) =>
    [((t - midnight) / HOUR) % 24, Math.floor((t - midnight) / HOUR / 24)] as const;
  const outside = (t: number) => 4 + 3 * Math.sin((2 * Math.PI * (t - midnight)) / (31 * HOUR));
  const sun = (t: number) => {
    const [hour, day] = clock(t);
    return hour > 9 && hour < 15 ? 100 + 60 * ((day * 7) % 5) : 0;
  };
  let temperature = 18;
  const inside = instants.map((t) => {
    const before = temperature;
    for (let s = 0; s < grid.step; s += 60) {
      const heat =
        power(...clock(t + s)) + gains + aperture * sun(t + s) - HEAT_LOSS * (temperature - outside(t + s));
      temperature += (60 * heat) / CAPACITY;
    }
    return before;
  });
  return {
    grid,
    rooms: [],
    insideTemperature: inside,
    outsideTemperature: instants.map(outside),
    differenceSd: 0,
    insideResolution: 0.01,
    windSpeed: null,
    irradiance: aperture > 0 ? instants.map(sun) : null,
    // A cell reaches from five minutes before its instant to five minutes after it.
    heatingPower: instants.map((t) => power(...clock(t))),
    heatingPowerSd: 0.02,
  };
}

describe('a heated night of a house that is one node', () => {
  const record = oneNode(2, (hour, day) => (day === 0 && hour >= 17 && hour < 23 ? 4500 : 0));
  const nights = nightsOf(record).slice(0, 1);

  test('gives its heat loss within 2 %: the slopes are straight lines over two hours of a curve', () => {
    const { estimate } = heatThenCool(record, nights, 0);
    expect(estimate).not.toBeNull();
    expect(Math.abs((estimate?.heatLossCoefficient.value ?? 0) / HEAT_LOSS - 1)).toBeLessThan(0.02);
  });

  test('has an interval of at least 30 % either way, because no house is one node', () => {
    const interval = heatThenCool(record, nights, 0).estimate?.heatLossCoefficient;
    expect((interval?.high ?? 0) / (interval?.value ?? 1)).toBeGreaterThan(1.3);
  });

  test('without a heater says nothing', () => {
    expect(heatThenCool({ ...record, heatingPower: null }, nights, 0).estimate).toBeNull();
    expect(
      heatThenCool(
        oneNode(2, () => 0),
        nights,
        0,
      ).estimate,
    ).toBeNull();
  });

  test('with the heater still on when the record ends says nothing', () => {
    const cut = oneNode(1, (hour, day) => (day === 0 && hour >= 17 ? 4500 : 0));
    const { grid } = cut;
    const length = 60; // ten hours from noon: the record ends at 22:00
    const shortened = {
      ...cut,
      grid: { ...grid, length },
      insideTemperature: cut.insideTemperature.subarray(0, length),
      outsideTemperature: cut.outsideTemperature.subarray(0, length),
      heatingPower: cut.heatingPower?.subarray(0, length) ?? null,
    };
    expect(heatThenCool(shortened, nights, 0).estimate).toBeNull();
  });

  test('with the heater on for one hour only says nothing: its slope has not settled', () => {
    const short = oneNode(2, (hour, day) => (day === 0 && hour >= 20 && hour < 21 ? 4500 : 0));
    expect(heatThenCool(short, nights, 0).estimate).toBeNull();
  });
});
