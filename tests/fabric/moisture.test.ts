import fc from 'fast-check';
import { sum } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { exampleClimates, type InsideAir, monthsOfAir } from '../../src/fabric/moisture/climate.ts';
import { vapourFlow } from '../../src/fabric/moisture/flow.ts';
import type { MoistureLayer } from '../../src/fabric/moisture/layers.ts';
import { moistureOf, moistureYear } from '../../src/fabric/moisture/moisture.ts';
import { moistureOfMonth } from '../../src/fabric/moisture/month.ts';

const surfaces = { inside: 0.13, outside: 0.04 };
const [mild, cold] = exampleClimates;
const classThree: InsideAir = { kind: 'class', humidityClass: 3, temperature: 20 };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLayer: fc.Arbitrary<MoistureLayer> = fc.record({
  name: fc.constant('layer'),
  resistance: between(0.01, 4),
  vapourThickness: between(0.01, 20),
});
const anyLayers = fc.array(anyLayer, { minLength: 1, maxLength: 5 });
const anyClimate = fc.constantFrom(...exampleClimates);
const yearOf = (layers: readonly MoistureLayer[], outside = cold, inside: InsideAir = classThree) =>
  moistureYear({ surfaces, layers }, monthsOfAir(outside, inside));

describe('vapour flow', () => {
  test('gives the pressures that relaxation below saturation settles at', () => {
    // COMPUTED another way: each plane in turn takes the mean of its neighbours, weighted by sd, and is pressed
    // down to saturation, or up to it where it is wet; repeated until nothing moves.
    const plane = fc.record({ step: between(0.1, 3), saturation: between(500, 2300), wet: fc.boolean() });
    fc.assert(
      fc.property(fc.array(plane, { minLength: 1, maxLength: 5 }), between(0.1, 3), (inner, end) => {
        const steps = [...inner.map((it) => it.step), end];
        const vapourThickness = [0, ...steps.map((_, i) => sum(steps.slice(0, i + 1)))];
        const saturation = [2300, ...inner.map((it) => it.saturation), 2300];
        const wet = [false, ...inner.map((it) => it.wet), false];
        const settled = [1300, ...inner.map((it) => it.saturation), 600];
        for (let round = 0; round < 4000; round++)
          for (let k = 1; k < settled.length - 1; k++) {
            const [a, b] = [steps[k - 1], steps[k]];
            const mean = (settled[k - 1] * b + settled[k + 1] * a) / (a + b);
            settled[k] = wet[k] ? saturation[k] : Math.min(saturation[k], mean);
          }
        const { pressure } = vapourFlow({
          vapourThickness,
          saturation,
          wet,
          insidePressure: 1300,
          outsidePressure: 600,
        });
        // 4000 rounds over at most five planes whose steps differ 30-fold leave well under 0.01 Pa.
        pressure.forEach((it, k) => {
          expect(Math.abs(it - settled[k])).toBeLessThan(0.01);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('the moisture of a year', () => {
  test('closes its balance: what came in and did not go out is there', () => {
    fc.assert(
      fc.property(anyLayers, anyClimate, (layers, climate) => {
        for (const it of yearOf(layers, climate).months)
          expect(Math.abs(sum([...it.gained]) - (it.inflow - it.outflow))).toBeLessThan(1e-9);
      }),
    );
  });
  test('is never negative, and pressures never exceed saturation', () => {
    fc.assert(
      fc.property(anyLayers, anyClimate, (layers, climate) => {
        for (const { mass, pressure, saturation } of yearOf(layers, climate).months) {
          expect(Math.min(...mass)).toBeGreaterThanOrEqual(0);
          // Relative 1e-9: rounding along the string.
          pressure.forEach((it, at) => {
            expect(it).toBeLessThanOrEqual(saturation[at] * (1 + 1e-9));
          });
        }
      }),
    );
  });
  test('has no condensation when the inside has no more vapour than outside and is warmer', () => {
    const dry: InsideAir = {
      kind: 'given',
      temperature: mild.temperature.map(() => 20),
      // 15 % at 20 °C is 350 Pa; the driest month outside has about 690 Pa.
      relativeHumidity: mild.temperature.map(() => 0.15),
    };
    fc.assert(
      fc.property(anyLayers, (layers) => {
        expect(yearOf(layers, mild, dry)).toMatchObject({ outcome: 'stays dry', wettest: null });
      }),
    );
  });
  test('with more vapour resistance inside never gathers more at its peak', () => {
    fc.assert(
      fc.property(anyLayers, anyClimate, between(0.1, 100), (layers, climate, more) => {
        const tight = { name: 'membrane', resistance: 0, vapourThickness: more };
        const loose = { ...tight, vapourThickness: 0.01 };
        const peak = (first: MoistureLayer) => yearOf([first, ...layers], climate).peak.mass;
        expect(peak(tight)).toBeLessThanOrEqual(peak(loose) + 1e-9);
      }),
    );
  });
  test('begins with the first month that condenses after the dry season', () => {
    const wool = { name: 'wool', resistance: 3, vapourThickness: 0.2 };
    const board = { name: 'board', resistance: 0.1, vapourThickness: 3 };
    const gained = yearOf([wool, board]).months.map((it) => sum([...it.gained]));
    expect(gained[0]).toBeGreaterThan(0);
    expect(gained[11]).toBeLessThanOrEqual(0);
  });
  test('is the same whichever part of the year is written first', () => {
    const air = monthsOfAir(cold, classThree);
    const layers = [
      { name: 'wool', resistance: 3, vapourThickness: 0.2 },
      { name: 'board', resistance: 0.1, vapourThickness: 3 },
    ];
    const masses = (months: typeof air) =>
      moistureYear({ surfaces, layers }, months).months.map((it) => [it.month, ...it.mass]);
    expect(masses([...air.slice(5), ...air.slice(0, 5)])).toEqual(masses(air));
  });
});

test('a month in two halves leaves the water that the whole month leaves, whatever dries in it', () => {
  const plane = fc.record({ step: between(0.1, 3), saturation: between(700, 2300), mass: between(0, 0.3) });
  fc.assert(
    fc.property(fc.array(plane, { minLength: 1, maxLength: 6 }), between(0.1, 3), (inner, end) => {
      const steps = [...inner.map((it) => it.step), end];
      const steady = {
        vapourThickness: [0, ...steps.map((_, i) => sum(steps.slice(0, i + 1)))],
        saturation: [2300, ...inner.map((it) => it.saturation), 2300],
        insidePressure: 1200,
        outsidePressure: 650,
      };
      const before = [0, ...inner.map((it) => it.mass), 0];
      const month = 30 * 86_400;
      const half = moistureOfMonth(steady, before, month / 2);
      const halves = moistureOfMonth(steady, half.mass, month / 2);
      const whole = moistureOfMonth(steady, before, month);
      whole.mass.forEach((it, at) => {
        expect(Math.abs(it - halves.mass[at])).toBeLessThan(1e-9);
      });
    }),
  );
});

describe('a timber-frame wall of house.json', () => {
  const wall = (membrane: number) => ({
    layers: [
      { name: 'gypsum board', thicknessMm: 12.5, conductivityWmK: 0.25, vapourResistance: 10 },
      { name: 'membrane', resistanceM2KW: 0, sdM: membrane },
      {
        name: 'mineral wool',
        thicknessMm: 140,
        conductivityWmK: 0.035,
        vapourResistance: 1,
        bridge: { name: 'studs', fraction: 0.15, conductivityWmK: 0.13 },
      },
      { name: 'OSB', thicknessMm: 11, conductivityWmK: 0.13, vapourResistance: 50 },
      { name: 'cavity', thicknessMm: 50, air: 'ventilated' as const },
      { name: 'brick', thicknessMm: 102, conductivityWmK: 0.77 },
    ],
  });
  const codesOf = (findings: readonly { code: string }[]) => findings.map((it) => it.code);

  test('wets the outer board in winter and dries out in summer without a membrane', () => {
    const result = moistureOf(wall(0.01), cold, classThree);
    if (!result.calculated) throw new Error('all layers say what they need');
    expect(result.outcome).toBe('dries out');
    const { inner, outer } = result.planes[result.wettest?.plane ?? 0];
    expect([inner, outer]).toEqual([2, 3]);
    expect(codesOf(result.findings)).toEqual(
      expect.arrayContaining(['condensation-dries', 'moisture-airflow-not-covered']),
    );
  });
  test('stays dry behind a tight one', () => {
    expect(moistureOf(wall(50), cold, classThree)).toMatchObject({ calculated: true, outcome: 'stays dry' });
  });
  test('ends at the ventilated cavity, so the brick need not state anything; timbers are beside it', () => {
    const { findings } = moistureOf(wall(50), cold, classThree);
    expect(findings).toContainEqual({
      code: 'moisture-ends-at-ventilated',
      name: 'cavity',
      where: { key: 'layers[4]' },
    });
    expect(findings).toContainEqual({
      code: 'moisture-beside-bridge',
      name: 'studs',
      where: { key: 'layers[2]' },
    });
  });
  test('is not calculated while a layer states no vapour resistance, and the layer is named', () => {
    const layers = [{ name: 'plaster', thicknessMm: 13, conductivityWmK: 0.5 }];
    expect(moistureOf({ layers }, cold, classThree)).toEqual({
      calculated: false,
      findings: [{ code: 'vapour-resistance-missing', name: 'plaster', where: { key: 'layers[0]' } }],
    });
  });
  test('on the ground is not calculated: the standard does not reach there', () => {
    expect(codesOf(moistureOf(wall(1), cold, classThree, 'ground').findings)).toEqual([
      'moisture-ground-not-covered',
    ]);
  });
});

test('a warm deck of wool under foil, open to a humid room, gets wetter year by year', () => {
  const foil = { name: 'foil', resistance: 0, vapourThickness: 100 };
  const wool = { name: 'wool', resistance: 4, vapourThickness: 0.2 };
  const board = { name: 'board', resistance: 0.05, vapourThickness: 0.1 };
  const humid: InsideAir = { kind: 'class', humidityClass: 4, temperature: 20 };
  const { outcome, planes, wettest, findings } = yearOf([board, wool, foil], cold, humid);
  expect(outcome).toBe('accumulates');
  expect(planes[wettest?.plane ?? 0]).toMatchObject({ inner: 1, outer: 2 });
  expect(findings.map((it) => it.code)).toEqual([
    'condensation-stays',
    'condensation-may-run',
    'moisture-airflow-not-covered',
    'moisture-liquid-not-covered',
  ]);
});

test('a cold surface in humid air is said to be wet itself', () => {
  const humid: InsideAir = {
    kind: 'given',
    temperature: cold.temperature.map(() => 20),
    relativeHumidity: cold.temperature.map(() => 0.8),
  };
  const glass = { name: 'glass', resistance: 0.006, vapourThickness: 100 };
  const { findings } = yearOf([glass], cold, humid);
  expect(findings.map((it) => it.code)).toContain('surface-condensation');
});

test('a year with eleven months is a mistake in the call', () => {
  const short = { temperature: cold.temperature.slice(1), relativeHumidity: cold.relativeHumidity };
  expect(() => monthsOfAir(short, classThree)).toThrow(RangeError);
});

test('by class, the air inside is never more than saturated', () => {
  const tropical = { temperature: Array(12).fill(19), relativeHumidity: Array(12).fill(1) };
  const [january] = monthsOfAir(tropical, { kind: 'class', humidityClass: 4, temperature: 16 });
  // MEMORY: saturation at 16 °C is about 1817 Pa
  expect(january.insidePressure).toBeCloseTo(1817, -1);
});
