/** An invented house of one node whose heat is all metered, and what a daily balance makes of it. */
import { type JudgedNight, judgeNights } from '../../src/cooling/index.ts';
import { designOf } from '../../src/fabric/index.ts';
import { heatBalance } from '../../src/heatloss/index.ts';
import type { House } from '../../src/house.ts';
import { gridOver, timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { clearSkyIrradiance } from '../../src/sky/irradiance.ts';
import { nightsBetween } from '../../src/sky/nights.ts';
import { sunPosition } from '../../src/sky/sunPosition.ts';

export const HOUR = 3600;
export const CAPACITY = 15e6; // [J/K]
export const location = { latitude: 52, longitude: -1, timeZone: 'UTC' };
export const midnight = Date.UTC(2027, 0, 10) / 1000;

export interface Truth {
  readonly days?: number;
  readonly heatLoss?: number;
  /** Solar aperture for global irradiance [m²]. */
  readonly aperture?: number;
  readonly gains?: number;
  /** To a neighbour [W/K] who is so warm [°C]. */
  readonly toNeighbour?: number;
  readonly neighbour?: number;
  /** A window stands open for twenty minutes at these instants: so much more heat is lost [W/K]. */
  readonly openedAt?: readonly number[];
}

/**
 * C·dT/dt = P + gains + aperture·sun − H·(T − Te) − N·(T − Tn), by the minute, at a thermostat that knows what is
 * needed. Days are clear, dull and between by turns.
 */
export function recordOf(truth: Truth = {}): HouseRecord {
  const { days = 14, heatLoss = 120, aperture = 0, gains = 0, toNeighbour = 0, neighbour = 20 } = truth;
  const grid = gridOver(midnight, midnight + days * 24 * HOUR);
  const instants = Float64Array.from({ length: grid.length }, (_, i) => timeAt(grid, i));
  const outside = (t: number) =>
    3 +
    4 * Math.sin((2 * Math.PI * (t - midnight)) / (31 * HOUR)) +
    3 * Math.sin((2 * Math.PI * (t - midnight)) / (139 * HOUR));
  const clearness = (t: number) => [0.9, 0.2, 0.5, 0.15, 0.7][Math.floor((t - midnight) / (24 * HOUR)) % 5];
  const sun = (t: number) => clearness(t) * clearSkyIrradiance(sunPosition(t, location));
  const open = (t: number) => (truth.openedAt ?? []).some((at) => t >= at && t < at + 1200);
  const inside = new Float64Array(grid.length);
  const power = new Float64Array(grid.length);
  let temperature = 20;
  instants.forEach((t, i) => {
    inside[i] = temperature;
    const hour = ((t - midnight) / HOUR) % 24;
    const wanted = hour >= 6 && hour < 22 ? 20 : 18;
    const atRest =
      heatLoss * (temperature - outside(t)) +
      toNeighbour * (temperature - neighbour) -
      gains -
      aperture * sun(t);
    // a cell reaches from five minutes before its instant to five after: the heat of both halves is the same here
    power[i] = Math.max(0, Math.min(6000, atRest + (CAPACITY * (wanted - temperature)) / (2 * HOUR)));
    for (let s = 0; s < grid.step; s += 60) {
      const now = t + s;
      const lost = (heatLoss + (open(now) ? 3000 : 0)) * (temperature - outside(now));
      const beside = toNeighbour * (temperature - neighbour);
      temperature += (60 * (power[i] + gains + aperture * sun(now) - lost - beside)) / CAPACITY;
    }
  });
  return {
    grid,
    rooms: [],
    insideTemperature: inside,
    outsideTemperature: instants.map(outside),
    differenceSd: 0.2,
    insideResolution: 0.01,
    windSpeed: null,
    irradiance: aperture > 0 ? instants.map(sun) : null,
    heatingPower: power,
    heatingPowerSd: 0.02,
  };
}

export const house = (extra: Partial<House> = {}): House => ({
  name: 'Invented house',
  location,
  loggers: [{ file: 'in.csv', place: 'inside' }],
  ...extra,
});

export const nightsOf = (record: HouseRecord, of = house()): JudgedNight[] =>
  judgeNights(
    record,
    nightsBetween(record.grid.start, timeAt(record.grid, record.grid.length - 1), of.location),
    of.nights,
  );

export function balanceOf(record: HouseRecord, of = house()) {
  const { start } = record.grid;
  const design = designOf(of);
  const { estimate, unanswered } = heatBalance({
    house: of,
    design: design && { ...design, heatCapacity: CAPACITY },
    record,
    stage: { from: start, to: timeAt(record.grid, record.grid.length - 1), missing: [] },
    nights: nightsOf(record, of),
  });
  const { value = Number.NaN, low = Number.NaN, high = Number.NaN } = estimate?.heatLossCoefficient ?? {};
  const notes = estimate?.notes ?? unanswered;
  return {
    estimate,
    value,
    low,
    high,
    notes,
    note: <C extends (typeof notes)[number]['code']>(code: C) =>
      notes.find((it): it is Extract<(typeof notes)[number], { code: C }> => it.code === code),
    leftOut: Object.fromEntries(
      notes.flatMap((it) => (it.code === 'days-left-out' ? [[it.why, it.count] as const] : [])),
    ),
  };
}
