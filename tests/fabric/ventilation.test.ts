import { describe, expect, test } from 'vitest';
import {
  airChangesFromPermeability,
  divisorOf,
  ventilationLoss,
  ventilationOf,
} from '../../src/fabric/ventilation.ts';
import { invented } from './inventedHouse.ts';

test('half an air change an hour in 240 m³ loses 39.6 W/K', () => {
  // MEMORY: SAP worksheet (38), 0.33·n·V
  expect(ventilationLoss(0.5, 240)).toBeCloseTo(39.6, 12);
});

test('a heat recovery of 80 % leaves a fifth of it', () => {
  // COMPUTED by hand: 0.2 · 39.6
  expect(ventilationLoss(0.5, 240, 0.8)).toBeCloseTo(7.92, 12);
});

test('a permeability of 5 over 240 m² about 300 m³ is 0.2 air changes on an everyday day', () => {
  // COMPUTED by hand: 5·240/300/20; the divisor of 20 is MEMORY (SAP, Kronvall and Persily)
  expect(airChangesFromPermeability(5, 240, 300)).toBeCloseTo(0.2, 12);
});

test('the divisor of 20 grows in shelter and falls in a tall or exposed house', () => {
  // MEMORY: Sherman 1987, factors 1.2 / 1 / 0.9 and 1 / 0.9 / 0.8 / 0.7
  expect(divisorOf()).toBe(20);
  expect(divisorOf('sheltered', 1)).toBeCloseTo(24, 12);
  expect(divisorOf('average', 2)).toBeCloseTo(16, 12);
  expect(divisorOf('exposed', 3)).toBeCloseTo(12.6, 12);
  expect(divisorOf('average', 1.5)).toBeCloseTo(18, 12);
  expect(divisorOf('average', 0.5)).toBe(20);
});

describe('the air of a house', () => {
  const of = (ventilation: object) =>
    ventilationOf(
      invented({ volumeM3: 240, elements: [{ name: 'W', areaM2: 100, uValue: 1 }], ventilation }),
      200,
    );
  test('by stated air changes is within 30 %, or within what the house says', () => {
    // COMPUTED by hand: 0.33·0.5·240 = 39.6, ±30 % and ±10 %
    const { asDrawn } = of({ airChangesPerHour: 0.5 });
    expect([asDrawn.low, asDrawn.value, asDrawn.high].map((it) => it.toFixed(2))).toEqual([
      '27.72',
      '39.60',
      '51.48',
    ]);
    expect(of({ airChangesPerHour: 0.5, plusMinusPercent: 10 }).asDrawn.high).toBeCloseTo(43.56, 9);
  });
  test('by leakage at 50 Pa has the range of its divisor: 10 to 30 about 20', () => {
    // COMPUTED by hand: 6·200/240 = 5 per hour at 50 Pa; 0.33·240·5/20 = 19.8, /30 = 13.2, /10 = 39.6
    const { asDrawn, findings } = of({ airPermeability50: 6 });
    expect(asDrawn.value).toBeCloseTo(19.8, 9);
    expect(asDrawn.low).toBeCloseTo(13.2, 9);
    expect(asDrawn.high).toBeCloseTo(39.6, 9);
    expect(findings).toEqual([
      {
        code: 'leakage-by-divisor',
        divisor: 20,
        low: 10,
        high: 30,
        where: { key: 'ventilation.airPermeability50' },
      },
    ]);
  });
  test('by leakage follows shelter and storeys, or the divisors that are stated', () => {
    expect(of({ airPermeability50: 6, storeys: 2, shelter: 'exposed' }).asDrawn.value).toBeCloseTo(27.5, 9);
    const { asDrawn } = of({ airPermeability50: 6, divisor: 20, divisorLow: 15, divisorHigh: 25 });
    expect(asDrawn.high).toBeCloseTo(26.4, 9);
    expect(asDrawn.low).toBeCloseTo(15.84, 9);
  });
  test('through a unit gives heat back, what leaks beside it does not', () => {
    // COMPUTED by hand: leakage 19.8; 0.33·0.4·240 = 31.68 through the unit, 20 % of it lost: 6.336.
    // Recovery 0.7 to 0.85: 31.68·0.15 + 13.2 and 31.68·0.3 + 39.6
    const { asDrawn, findings } = of({
      airPermeability50: 6,
      mechanicalAirChangesPerHour: 0.4,
      heatRecovery: 0.8,
    });
    expect(asDrawn.value).toBeCloseTo(26.136, 9);
    expect(asDrawn.low).toBeCloseTo(17.952, 9);
    expect(asDrawn.high).toBeCloseTo(49.104, 9);
    expect(findings.map((it) => it.code)).toEqual(['leakage-by-divisor']);
  });
  test('as tested has its range as well', () => {
    const { asTested } = of({ airChangesPerHour: 0.5, asTestedAirChangesPerHour: 0.2 });
    // COMPUTED by hand: 15.84 ± 30 %
    expect(asTested?.low).toBeCloseTo(11.088, 9);
    expect(asTested?.high).toBeCloseTo(20.592, 9);
  });
});
