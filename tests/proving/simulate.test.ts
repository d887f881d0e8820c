import { describe, expect, test } from 'vitest';
import { twoStoreyHouse, type WallKind } from './archetypes.ts';
import type { Films } from './boundary.ts';
import { makeModel } from './makeModel.ts';
import type { Model } from './model.ts';
import { areaOf, asDrawn, transmittances } from './plan.ts';
import { type Scenario, simulate } from './simulate.ts';
import { steadyWeather } from './steadyWeather.ts';
import { layersResistance } from './transmittance.ts';
import { leftAlone, siteDays } from './use.ts';
import { inlandEngland, makeWeather } from './weather.ts';

const kinds: WallKind[] = ['timber frame', 'cavity', 'solid, insulated outside', 'solid, insulated inside'];
const leaky = [{ from: 0, leakage: { stack: 0.004, wind: 0.003, intoVoid: 0.2 } }];
const windOnly = [{ from: 0, leakage: { stack: 0, wind: 0.01, intoVoid: 0.2 } }];
const hour = 3600;
const day = 86400;

function winter(kind: WallKind, seed: number, step: number): Scenario {
  const start = Date.parse('2027-01-01T00:00:00Z') / 1000;
  const place = { latitude: 52.2, longitude: -1.5 };
  return {
    model: makeModel(twoStoreyHouse(kind), asDrawn),
    weather: makeWeather(seed, inlandEngland, place, start, start + 10 * day, step),
    use: {
      ...leftAlone(4),
      ...siteDays(seed, start, 10, []),
      heatingPower: [3000, 2500, 3000, 0],
      constantGains: [30, 30, 30, 0],
      workingLeakage: 1.8,
    },
    shells: leaky,
    films: 'natural',
    startTemperature: 15,
  };
}

/** A warm house left alone in unchanging weather; without its ground, whose own slow cooling would mix in. */
function cooling(kind: WallKind, films: Films, days: number, step: number): Scenario {
  const whole = makeModel(twoStoreyHouse(kind), asDrawn);
  const model: Model = { ...whole, pieces: whole.pieces.filter((piece) => piece.outside.kind !== 'ground') };
  const weather = steadyWeather(5, days * day, step, 4);
  return { model, weather, use: leftAlone(4), shells: windOnly, films, startTemperature: 20 };
}

describe('simulate', () => {
  test.each(kinds)('%s: heat given is heat lost and heat stored', (kind) => {
    const { given, lost, stored } = simulate(winter(kind, 21, 120)).balance;
    // Every exchange is solved for at the same instant: rounding only, over 7200 steps.
    expect(Math.abs(given - lost - stored)).toBeLessThan(1e-9 * given);
    expect(given).toBeGreaterThan(500 * 10 * day); // half a kilowatt at least: the balance has something to hold
  });

  test('the same seed gives the same bytes', () => {
    expect(simulate(winter('cavity', 21, 120))).toEqual(simulate(winter('cavity', 21, 120)));
  });

  test.each(kinds)('%s: cools in the end as one exponential, at a rate that half the step keeps', (kind) => {
    const rates = [240, 120].map((step) => {
      const [living] = simulate(cooling(kind, 'standard', 14, step)).airTemperature;
      const rate = (from: number) => {
        const at = (hours: number) => living[(hours * hour) / step] - 5;
        return Math.log(at(from) / at(from + 48)) / (48 * hour);
      };
      // Ten days leave only the slowest term: the rate of the next days is the same to a thousandth.
      expect(Math.abs(rate(240) / rate(288) - 1)).toBeLessThan(1e-3);
      return rate(288);
    });
    // An implicit step of 240 s lowers a rate r by r * 120 s: 0.2 % at a time constant of 20 h, and less above.
    expect(Math.abs(rates[0] / rates[1] - 1)).toBeLessThan(2e-3);
  });

  test.each(kinds)('%s: half the step moves no room by 0.02 K with films as they are', (kind) => {
    const coarse = simulate(cooling(kind, 'natural', 4, 120)).airTemperature;
    const fine = simulate(cooling(kind, 'natural', 4, 60)).airTemperature;
    // First order: the fall of about 12 K with a time constant of a day or more errs by 12 K * 60 s / 1 d.
    for (let z = 0; z < 3; z++)
      for (let k = hour / 120; k < coarse[z].length; k++)
        expect(Math.abs(coarse[z][k] - fine[z][2 * k])).toBeLessThan(0.02);
  });

  test('a room with the films of ISO 6946 needs its transmittances times areas, bridges and 0.33 n V', () => {
    const plan = twoStoreyHouse('cavity');
    const whole = makeModel(plan, asDrawn);
    const toOutside = whole.pieces.filter(({ outside }) => outside.kind === 'outside');
    const model: Model = {
      ...whole,
      zones: [{ ...whole.zones[0], bridges: 5, inletShare: 1, passesTo: [] }],
      heatedZones: [0],
      exchanges: [],
      // All walls, windows and doors about one room; a roof slope would be under the void.
      pieces: toOutside
        .filter(({ name }) => name !== 'Roof slope')
        .map((piece) => ({ ...piece, inside: { ...piece.inside, zone: 0 } })),
    };
    const shells = [{ from: 0, leakage: { stack: 0, wind: 0.01, intoVoid: 0 } }];
    const use = { ...leftAlone(1), constantGains: [1000] };
    const weather = steadyWeather(5, 60 * day, 600, 4);
    const run = simulate({ model, weather, use, shells, films: 'standard', startTemperature: 15 });
    const names = plan.elements.map(({ name }) => name).filter((name) => name !== 'Ceiling');
    const values = transmittances(plan, asDrawn);
    const fabric = names.reduce(
      (sum, name) => sum + (values.get(name) ?? Number.NaN) * areaOf(plan, name),
      0,
    );
    const leakage = 0.33 * whole.zones[0].volume * Math.sqrt(0.01 * 4 ** 2);
    const last = run.airTemperature[0].length - 1;
    // 60 days are some thirty time constants: what is left of the start is below rounding of the sixth digit.
    expect(1000 / (run.airTemperature[0][last] - 5) / (fabric + 5 + leakage)).toBeCloseTo(1, 6);
  });

  test('a roof void settles between the room below and the outside as its conductances say', () => {
    const alone = cooling('cavity', 'standard', 120, 600);
    const shells = [{ from: 0, leakage: { stack: 0, wind: 0.01, intoVoid: 0 } }];
    const use = { ...leftAlone(4), constantGains: [500, 500, 500, 0] };
    const run = simulate({ ...alone, use, shells });
    const last = run.airTemperature[2].length - 1;
    const ceiling = alone.model.pieces.find(({ name }) => name === 'Ceiling');
    // Up through the ceiling; out through 60 m² of slopes of 0.06 and 0.015 / 1 m²K/W, and with the wind's air.
    const up = 48 / (0.1 + layersResistance(ceiling?.layers ?? []) + 0.17);
    const out = 60 / (0.1 + 0.06 + 0.015 + 0.04) + 0.33 * (3 + 1.2 * 4) * 50;
    const rise = (z: number) => run.airTemperature[z][last] - 5;
    expect(rise(3) / rise(2)).toBeCloseTo(up / (up + out), 6);
  });
});
