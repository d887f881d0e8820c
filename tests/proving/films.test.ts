import { describe, expect, test } from 'vitest';
import { clearSkyTemperature, insideConvection, insideConvections } from './films.ts';

describe('convection at an inside face', () => {
  test.each(insideConvections)('by %s is some watts per kelvin, and least where heat lies still', (by) => {
    for (const difference of [1, 3, 8]) {
      const rising = insideConvection('floor', difference, by);
      const still = insideConvection('floor', -difference, by);
      expect(still).toBeGreaterThanOrEqual(0.5);
      expect(rising).toBeGreaterThan(still);
      expect(rising).toBeLessThan(6);
    }
  });

  test('by Walton is 1.31 at an upright face that is 1 K off', () => {
    // MEMORY, of the report that `films.ts` cites.
    expect(insideConvection('wall', 1)).toBeCloseTo(1.31, 12);
  });
});

test('a clear sky over air of 10 °C is some 19 K colder by Swinbank', () => {
  // COMPUTED by hand: 0.0552 * 283.15^1.5 = 263.003 K, that is -10.15 °C.
  expect(clearSkyTemperature(10)).toBeCloseTo(-10.15, 1);
});
