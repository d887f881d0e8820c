/**
 * ISO 13786:2017 dynamic characteristics. No published numeric example could be read: every figure is
 * COMPUTED, by the transfer matrix and again by a complex finite-difference mesh of 60 nodes a layer (they
 * agree to 0.02 %).
 */
import { describe, expect, test } from 'vitest';
import { periodicResponse, type Response } from '../../src/fabric/heatCapacity.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { known, solid } from '../fabric/walls.ts';
import { dynamicWalls } from './dynamicWalls.ts';

const surfaces = { inside: 0.13, outside: 0.04 };

/** 0.1 % of the figure, but never finer than half its last printed digit. */
const near = (value: number, expected: number, lastDigit: number) => {
  const tolerance = Math.max(0.001 * Math.abs(expected), lastDigit / 2);
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const responds = ({ modulus, lead }: Response, [size, hours]: readonly [number, number]) => {
  near(modulus, size, 0.0001);
  expect(Math.abs(lead / 3600 - hours), `${lead / 3600} h against ${hours} h`).toBeLessThanOrEqual(0.01);
};

describe.each(dynamicWalls)('the wall "$name" over 24 hours', ({ layers, U, Y11, Y22, Y12, f, κ1, κ2 }) => {
  const buildUp = { facing: 'across', layers } as const;
  const response = periodicResponse(buildUp, surfaces);
  test('has its steady transmittance', () => {
    near(known(transmittanceOf(buildUp, surfaces).transmittance), U, 0.0001);
  });
  test('has its admittances and their lead', () => {
    responds(response.insideAdmittance, Y11);
    responds(response.outsideAdmittance, Y22);
  });
  test('passes on its share of an outdoor swing, that much later', () => {
    responds(response.periodicTransmittance, Y12);
    near(response.decrement, f, 0.0001);
    expect(Math.abs(response.timeShift / 3600 + Y12[1])).toBeLessThanOrEqual(0.01);
  });
  test('has its heat capacity on either face', () => {
    near(response.insideHeatCapacity / 1e3, κ1, 0.01);
    near(response.outsideHeatCapacity / 1e3, κ2, 0.01);
  });
});

describe('a very thick layer without surface resistance', () => {
  const bare = { inside: 0, outside: 0 };
  const layer = (thickness: number, [λ, ρ, c]: readonly number[]) =>
    periodicResponse({ facing: 'across', layers: [solid(thickness, λ, ρ, c)] }, bare);

  // COMPUTED: [λ, ρ, c], penetration depth √(λT/πρc) [m], admittance √(2πλρc/T) [W/(m²K)]
  const materials = [
    ['concrete', [1.8, 2400, 1000], 0.14362, 17.7245],
    ['brick', [0.77, 1700, 800], 0.12478, 8.7267],
    ['plasterboard', [0.25, 900, 1000], 0.0874, 4.0451],
  ] as const;

  test.each(materials)('of %s has the admittance √(2πλρc/T), 3 h ahead', (_, material, δ, admittance) => {
    const { insideAdmittance } = layer(20 * δ, material);
    near(insideAdmittance.modulus, admittance, 0.0001);
    expect(insideAdmittance.lead / 3600).toBeCloseTo(3, 6);
  });
  test.each(materials)(
    'of %s and five penetration depths passes on a swing 16.1 h later',
    (_, material, δ) => {
      // COMPUTED: Y12 = z/(R·sinh z) with z = (1 + j)·5 lags by 5 - π/4 rad, (5 - π/4)·12/π = 16.099 h
      expect(layer(5 * δ, material).periodicTransmittance.lead / 3600).toBeCloseTo(-16.099, 2);
    },
  );
  test.each(materials)('of %s passes on 1/e for each further penetration depth', (_, material, δ) => {
    const ratio =
      layer(8 * δ, material).periodicTransmittance.modulus /
      layer(9 * δ, material).periodicTransmittance.modulus;
    // The depth is printed to 1 in 14 000 at worst, nine of them to 0.07 %.
    near(ratio, Math.E, 0.001);
  });
});
