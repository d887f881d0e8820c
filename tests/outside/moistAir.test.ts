/**
 * Moist air against published values. READ: the figure stands in the source named. MEMORY: known, not seen
 * this time. COMPUTED: worked out independently by the published formula.
 */
import { describe, expect, test } from 'vitest';
import {
  absoluteHumidity,
  airDensity,
  airPressureAt,
  coldestSurface,
  dewPoint,
  humidityRatio,
  moistureExcess,
  relativeHumidity,
  saturationPressure,
  surfaceTemperature,
  temperatureFactor,
  temperatureFactorOfPlane,
  vapourPressure,
} from '../../src/air/index.ts';

describe('saturation vapour pressure', () => {
  test.each([
    // COMPUTED by ISO 13788:2012, Annex E (MEMORY); printed to 0.01 Pa
    [-20, 102.74],
    [-10, 259.33],
    [0, 610.5],
    [5, 871.86],
    [10, 1227.31],
    [20, 2336.95],
    [25, 3165.92],
    [30, 4240.51],
  ])('at %d °C is %d Pa by the standard’s formula', (temperature, pressure) => {
    expect(saturationPressure(temperature)).toBeCloseTo(pressure, 2);
  });

  test.each([
    [-20, 103.24], // READ ASHRAE Handbook 2017, chapter 1, Table 3, as psychrometric tests quote it
    [-10, 259.87], // COMPUTED by the IAPWS sublimation equation
    [0, 611.21], // COMPUTED by IAPWS-IF97
    [5, 872.6], // READ ASHRAE, same table
    [10, 1228.18], // COMPUTED by IAPWS-IF97
    [20, 2339.21], // COMPUTED by IAPWS-IF97
    [25, 3169.7], // READ ASHRAE, same table
    [30, 4246.69], // COMPUTED by IAPWS-IF97
  ])('at %d °C is near the reference, %d Pa', (temperature, reference) => {
    // The formula's own error: 0.35 % from -10 to 30 °C, 0.5 % at -20 °C.
    const tolerance = temperature < -10 ? 0.005 : 0.0035;
    expect(Math.abs(saturationPressure(temperature) / reference - 1)).toBeLessThan(tolerance);
  });
});

describe('dew point', () => {
  test.each([
    // MEMORY: DIN 4108-3, table of dew points; printed to 0.1 K
    [20, 0.4, 6.0],
    [20, 0.5, 9.3],
    [20, 0.6, 12.0],
    [20, 0.7, 14.4],
    [20, 0.8, 16.4],
    [22, 0.5, 11.1],
    [25, 0.6, 16.7],
  ])('of air at %d °C and %d is %d °C', (temperature, humidity, expected) => {
    expect(dewPoint(temperature, humidity)).toBeCloseTo(expected, 1);
  });
});

describe('contents of air', () => {
  test.each([
    // COMPUTED by v = p/(461.5·T), ISO 13788; textbooks print 4.8, 9.4, 17.3 and 30.3 g/m³ (MEMORY)
    [0, 4.84],
    [10, 9.39],
    [20, 17.27],
    [30, 30.31],
  ])('saturated air at %d °C holds %d g/m³', (temperature, grams) => {
    expect(absoluteHumidity(temperature, saturationPressure(temperature)) * 1000).toBeCloseTo(grams, 2);
  });
  test('air at 20 °C and 50 % has 1168.5 Pa of vapour and 8.637 g/m³', () => {
    const pressure = vapourPressure(20, 0.5);
    expect(pressure).toBeCloseTo(1168.5, 1); // COMPUTED; DIN 4108-3 takes 1168 Pa (MEMORY)
    expect(absoluteHumidity(20, pressure) * 1000).toBeCloseTo(8.637, 3); // COMPUTED
  });
  test('3169.7 Pa of vapour at 95 461 Pa is a humidity ratio of 0.0213603998', () => {
    expect(humidityRatio(3169.7, 95_461)).toBeCloseTo(0.0213603998, 9); // READ, a public psychrometric test
  });
  test('at 40 °C a relative humidity of 14 % is a humidity ratio of 0.0065', () => {
    // READ: ASHRAE Handbook 2017, chapter 1, example 1. Half a percent of humidity is 0.0002 of the ratio.
    expect(Math.abs(humidityRatio(vapourPressure(40, 0.14)) - 0.0065)).toBeLessThan(0.00025);
  });
  test('dry air at sea level and 20 °C weighs 1.204 kg/m³', () => {
    expect(airDensity(20, 0)).toBeCloseTo(1.204, 3); // MEMORY, any table of air
  });
  test.each([
    // READ: ASHRAE Handbook 2017, chapter 1, Table 1, as psychrometric tests quote it; good to 1 Pa
    [0, 101_325],
    [500, 95_461],
    [1000, 89_875],
  ])('at %d m the standard atmosphere has %d Pa', (altitude, pressure) => {
    expect(Math.abs(airPressureAt(altitude) - pressure)).toBeLessThan(1);
  });
});

describe('surfaces', () => {
  test('at 20 °C and 50 % inside, a surface of 12.6 °C has the 80 % that mould needs: fRsi 0.70 at -5 °C', () => {
    const surface = coldestSurface(20, 0.5);
    expect(surface).toBeCloseTo(12.6, 1); // MEMORY: DIN 4108-2
    const factor = temperatureFactor(surface, { insideTemperature: 20, outsideTemperature: -5 });
    expect(Math.abs(factor - 0.7)).toBeLessThan(0.006); // MEMORY: DIN 4108-2 prints 0.70; 0.705 before rounding
  });
  test.each([
    // COMPUTED by ISO 13788, 5.3
    [20, 0.6, 0, 15.43, 0.772],
    [21, 0.55, 2, 15.04, 0.686],
  ])(
    'at %d °C and %d inside, %d °C outside: %d °C and fRsi %d',
    (inside, humidity, outside, surface, factor) => {
      expect(coldestSurface(inside, humidity)).toBeCloseTo(surface, 2);
      expect(
        temperatureFactor(coldestSurface(inside, humidity), {
          insideTemperature: inside,
          outsideTemperature: outside,
        }),
      ).toBeCloseTo(factor, 3);
    },
  );
  test('a plane element of U 0.7 has fRsi 0.825 behind furniture and 0.909 in the open', () => {
    expect(temperatureFactorOfPlane(0.7, 0.25)).toBeCloseTo(0.825, 3); // COMPUTED; formula READ in public code
    expect(temperatureFactorOfPlane(0.7, 0.13)).toBeCloseTo(0.909, 3); // COMPUTED
  });
  test('fRsi 0.75 between 20 °C at 50 % and 0 °C is 15.0 °C, and 68.6 % at the surface', () => {
    const surface = surfaceTemperature(0.75, { insideTemperature: 20, outsideTemperature: 0 });
    expect(surface).toBeCloseTo(15, 12); // COMPUTED
    expect(relativeHumidity(surface, vapourPressure(20, 0.5))).toBeCloseTo(0.686, 3); // COMPUTED
  });
});

describe('humidity classes', () => {
  test.each([
    // MEMORY: ISO 13788:2012, Annex A, figure A.2
    [1, 270, 2],
    [2, 540, 4],
    [3, 810, 6],
    [4, 1080, 8],
  ] as const)('class %d has up to %d Pa or %d g/m³ in frost', (humidityClass, pressure, grams) => {
    expect(moistureExcess(humidityClass, -3).pressure).toBe(pressure);
    expect(moistureExcess(humidityClass, -3).density * 1000).toBeCloseTo(grams, 12);
  });
  test('class 3 has 607.5 Pa or 4.5 g/m³ at 5 °C outside, and nothing from 20 °C', () => {
    expect(moistureExcess(3, 5).pressure).toBeCloseTo(607.5, 9); // COMPUTED
    expect(moistureExcess(3, 5).density * 1000).toBeCloseTo(4.5, 9); // COMPUTED
    expect(moistureExcess(3, 25)).toEqual({ pressure: 0, density: 0 });
  });
});
