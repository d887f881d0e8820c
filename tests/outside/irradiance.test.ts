/**
 * Irradiance against published figures.
 *
 * - Sky and ground on a tilted plane: the tests of the open-source library pvlib-python, READ.
 * - The clear sky and the diffuse share: the same tests, MEMORY (test_haurwitz, test_erbs); the arithmetic of the
 *   published formulas was done again by hand and agrees.
 */
import { describe, expect, test } from 'vitest';
import { clearSkyIrradiance, diffuseShare, irradianceOnPlane } from '../../src/sky/irradiance.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

describe('a plane tilted by 40° under a sun too low for a beam', () => {
  const sun = { elevation: radians(1), azimuth: radians(180) };
  const plane = { tilt: radians(40), azimuth: radians(180) };

  test('sees the sky and a fifth of what falls on the ground', () => {
    // READ: 88.302222 of 100 W/m² from an even sky; 26.320000 of 900 W/m² from ground of albedo 0.25, ours 0.2
    const expected = 88.302222 + (26.32 / 900 / 0.25) * 0.2 * 100;
    // half of the last digit
    expect(Math.abs(irradianceOnPlane(100, sun, plane, 0) - expected)).toBeLessThan(5e-6);
  });
});

describe('the clear sky by Haurwitz', () => {
  test.each([
    [-20, 0],
    [-0.05, 0],
    [0, 0],
    [5, 48.6298687941956],
    [10, 135.741748091813],
    [30, 487.894132885425],
    [50, 778.766689344363],
    [90, 1035.0920325345],
  ])('gives at %f° its irradiance', (degrees, expected) => {
    const sun = { elevation: radians(degrees), azimuth: 0 };
    // MEMORY; 1098·sin h·exp(-0.059/sin h) by hand: 30° 549·0.888696 = 487.894, 90° 1098·0.942707 = 1035.092
    expect(Math.abs(clearSkyIrradiance(sun) - expected)).toBeLessThan(1e-9);
  });
});

describe('the diffuse share by Erbs, Klein and Duffie', () => {
  test.each([
    // MEMORY: diffuse 41.5703604 of 50 W/m² and 217.860117 of 1000 W/m²
    [0.405723511, 41.5703604 / 50],
    [0.718132729, 217.860117 / 1000],
  ])('at a clearness of %f is that of the tests of pvlib', (clearness, expected) => {
    // half of the last digit of the clearness, times a slope of at most 3
    expect(Math.abs(diffuseShare(clearness) - expected)).toBeLessThan(2e-8);
  });

  test.each([
    // COMPUTED by hand from the published branches
    [0, 1],
    [0.1, 0.991],
    [0.22, 0.9802],
    // 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771
    [0.5, 0.65915],
    [0.81, 0.165],
    [1, 0.165],
  ])('at a clearness of %f is %f', (clearness, expected) => {
    expect(diffuseShare(clearness)).toBeCloseTo(expected, 12);
  });

  test('its branches meet to 0.0003, as far as the published figures do', () => {
    // COMPUTED: the polynomial is 0.97993 at 0.22 and 0.16527 at 0.8
    for (const [edge, within] of [
      [0.22, 3e-4],
      [0.8, 3e-4],
    ])
      expect(Math.abs(diffuseShare(edge + 1e-9) - diffuseShare(edge - 1e-9))).toBeLessThan(within);
  });
});
