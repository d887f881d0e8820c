/**
 * The average method of ISO 9869-1:2014, 7.1: U = Σq / Σ(Ti − Te), and the rules by which a test may end: 72 hours; R
 * at the end within 5 % of R 24 hours before; R of the first INT(2D/3) days within 5 % of that of the last INT(2D/3); the
 * element stored less than 5 % of what went through it.
 * The rules are MEMORY; each figure below is COMPUTED from them by hand, as the lines say. Tolerance: rounding only.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averageMethod, type Block } from '../../src/heatloss/surfaces/averageMethod.ts';

const day = { elementTemperature: 10, duration: 86_400 };
const days = (...heatFlux: readonly number[]): Block[] =>
  heatFlux.map((it) => ({ heatFlux: it, difference: 20, ...day }));

/** Of an element whose mass is not known. */
const averageOf = (blocks: readonly Block[]) => averageMethod(blocks, null);

describe('a wall at exact steady state', () => {
  // COMPUTED: R = 0.13 + 0.30/0.75 + 3.0 + 0.04 = 3.57 m²K/W; q = 20 K / 3.57 m²K/W
  const transmittance = 1 / (0.13 + 0.3 / 0.75 + 3 + 0.04);

  test('gives its transmittance and keeps all rules after three days', () => {
    const averaged = averageOf(days(...Array<number>(3).fill(20 * transmittance)));
    expect(averaged.transmittance).toBeCloseTo(transmittance, 12);
    expect(averaged.failed).toEqual([]);
  });

  test('has not run for 72 hours after two', () => {
    expect(averageOf(days(5, 5)).failed).toEqual(['duration']);
  });
});

test('it is the quotient of the sums, not the mean of the quotients', () => {
  // COMPUTED: (10 + 2 + 6) / (20 + 10 + 15) = 0.4; the mean of 0.5, 0.2 and 0.4 would be 0.367
  const blocks = [
    { heatFlux: 10, difference: 20, ...day },
    { heatFlux: 2, difference: 10, ...day },
    { heatFlux: 6, difference: 15, ...day },
  ];
  expect(averageOf(blocks).transmittance).toBeCloseTo(0.4, 12);
});

describe('the rules, each at its edge', () => {
  test('a last day that moves R by less than 5 % passes, by more than 5 % does not', () => {
    // COMPUTED: four days, the last of q: R before is 60/30 = 2; R at the end 80/(30 + q).
    // 80/(30 + q) ≥ 0.95·2 gives q ≤ 12.105.
    expect(averageOf(days(10, 10, 10, 12.1)).failed).not.toContain('last-day');
    expect(averageOf(days(10, 10, 10, 12.11)).failed).toContain('last-day');
  });

  test('thirds that differ by less than 5 % pass, by more than 5 % do not', () => {
    // COMPUTED: INT(2·6/3) = 4 of six days. First four 10, 10, 10, 10: R 2. Last four 10, 10, q, q: R 80/(20 + 2q).
    // (20 + 2q)/80 · 2 ≤ 1.05 gives q ≤ 11.
    expect(averageOf(days(10, 10, 10, 10, 10.99, 10.99)).failed).toEqual([]);
    expect(averageOf(days(10, 10, 10, 10, 11.01, 11.01)).failed).toEqual(['two-thirds']);
  });

  test('of five days the first three are set against the last three', () => {
    // COMPUTED: INT(10/3) = 3. First 10, 10, 10: R 2; last 10, 10, 11.6: R 60/31.6, 5.3 % apart.
    // All five: R 100/51.6, all but the last 2: 3.2 % apart.
    expect(averageOf(days(10, 10, 10, 10, 11.6)).failed).toEqual(['two-thirds']);
  });
});

test('what the element stored is set against what went through it', () => {
  // COMPUTED: three days of 10 W/m² are 2.592 MJ/m²; 5 % of that is 129.6 kJ/m², which 100 kJ/(m²K) store in 1.296 K.
  const warmedBy = (kelvins: number) =>
    days(10, 10, 10).map((it, i) => ({ ...it, elementTemperature: 10 + (kelvins * i) / 2 }));
  expect(averageMethod(warmedBy(1.29), 100e3).failed).toEqual([]);
  expect(averageMethod(warmedBy(1.3), 100e3).failed).toEqual(['storage']);
  expect(averageMethod(warmedBy(-1.3), 100e3).failed).toEqual(['storage']);
});

test('scaling the heat scales the transmittance and moves no rule', () => {
  const flux = fc.double({ min: 1, max: 40, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(flux, { minLength: 1, maxLength: 20 }),
      fc.constantFrom(0.5, 2, 4), // exact in binary, so that no rule is at its edge by rounding
      (fluxes, scale) => {
        const once = averageOf(days(...fluxes));
        const scaled = averageOf(days(...fluxes.map((it) => it * scale)));
        expect(scaled.transmittance).toBeCloseTo(once.transmittance * scale, 12);
        expect(scaled.failed).toEqual(once.failed);
      },
    ),
  );
});
