import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  absoluteHumidity,
  airDensity,
  dewPoint,
  pressureOfHumidity,
  relativeHumidity,
  saturationPressure,
  saturationTemperature,
  surfaceTemperature,
  temperatureFactor,
  vapourPressure,
} from '../../src/air/index.ts';

const temperature = fc.double({ min: -40, max: 60, noNaN: true });
const humidity = fc.double({ min: 0.01, max: 1, noNaN: true });

test('the dew point of saturated air is its temperature, in frost and in heat', () => {
  fc.assert(
    fc.property(temperature, (it) => {
      // Inverting an exponential twice: rounding only.
      expect(saturationTemperature(saturationPressure(it))).toBeCloseTo(it, 9);
    }),
  );
});

test('the dew point is never above the temperature, and the warmer of two airs holds more', () => {
  fc.assert(
    fc.property(temperature, humidity, fc.double({ min: 0.001, max: 20, noNaN: true }), (it, phi, more) => {
      expect(dewPoint(it, phi)).toBeLessThanOrEqual(it + 1e-9);
      expect(saturationPressure(it + more)).toBeGreaterThan(saturationPressure(it));
    }),
  );
});

test('relative and absolute humidity lead to the vapour pressure and back', () => {
  fc.assert(
    fc.property(temperature, humidity, (it, phi) => {
      const pressure = vapourPressure(it, phi);
      expect(relativeHumidity(it, pressure)).toBeCloseTo(phi, 12);
      expect(pressureOfHumidity(it, absoluteHumidity(it, pressure)) / pressure).toBeCloseTo(1, 12);
    }),
  );
});

test('moist air is lighter than dry air', () => {
  expect(airDensity(20, 1500)).toBeLessThan(airDensity(20, 0));
});

test('a temperature factor gives back the surface it was taken of', () => {
  const sides = { insideTemperature: 20, outsideTemperature: -3 };
  expect(surfaceTemperature(temperatureFactor(14.2, sides), sides)).toBeCloseTo(14.2, 12);
});

test('without a difference between inside and outside there is no temperature factor', () => {
  expect(temperatureFactor(15, { insideTemperature: 15, outsideTemperature: 15 })).toBeNaN();
});
