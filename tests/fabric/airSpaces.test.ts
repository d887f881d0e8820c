import { describe, expect, test } from 'vitest';
import { airSpaceResistance, usualEmissivity } from '../../src/fabric/airSpaces.ts';
import type { AirLayer } from '../../src/fabric/buildUp.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { air, wallSurfaces } from './walls.ts';

const wide = { width: Number.POSITIVE_INFINITY, emissivity: usualEmissivity };

describe('convection and radiation in a wide air space', () => {
  // MEMORY: ISO 6946:2017 Table 8, printed to two decimals. Two ways to the same figures, both from memory.
  test.each([
    ['across', [0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18]],
    ['up', [0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16]],
    ['down', [0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23]],
  ] as const)('come to the tabulated resistances with heat flowing %s', (facing, row) => {
    [0.005, 0.007, 0.01, 0.015, 0.025, 0.05, 0.1, 0.3].forEach((thickness, i) => {
      expect(airSpaceResistance({ facing, thickness, ...wide })).toBeCloseTo(row[i], 2);
    });
  });
});

describe('an air space', () => {
  // COMPUTED in another language by the formula of ISO 6946:2017 Annex D (MEMORY); rounding of the fifth decimal.
  test.each([
    ['25 mm with a face of 0.05', { facing: 'across', thickness: 0.025, ...wide, emissivity: 0.05 }, 0.66507],
    ['100 mm below a face of 0.05', { facing: 'down', thickness: 0.1, ...wide, emissivity: 0.05 }, 1.71204],
    ['50 mm thick, 100 mm wide', { facing: 'up', thickness: 0.05, width: 0.1, emissivity: 0.9 }, 0.18776],
    ['50 mm square', { facing: 'across', thickness: 0.05, width: 0.05, emissivity: 0.9 }, 0.23806],
  ] as const)('%s has the resistance of the formula', (_, space, resistance) => {
    expect(airSpaceResistance(space)).toBeCloseTo(resistance, 5);
  });
  test('of no thickness resists nothing', () => {
    expect(airSpaceResistance({ facing: 'across', thickness: 0, ...wide })).toBe(0);
  });
});

describe('an air layer in a build-up', () => {
  const resistance = (layer: Partial<AirLayer>) =>
    transmittanceOf({ facing: 'across', layers: [{ ...air(0.05), ...layer }] }, wallSurfaces).resistance -
    0.17;
  test('counts as small when it is narrower than ten times its thickness, else by the table', () => {
    expect(resistance({ width: 0.05 })).toBeCloseTo(0.23806, 5); // COMPUTED, as above
    expect(resistance({ width: 0.5 })).toBeCloseTo(0.18, 12); // MEMORY: Table 8
  });
  test('with a bright face resists more', () => {
    // COMPUTED by hand: E = 1/(1/0.1 + 1/0.9 - 1) = 0.0989011; 1/(1.25 + 0.504396)
    expect(resistance({ emissivity: 0.1 })).toBeCloseTo(0.569997, 5);
  });
});
