import { describe, expect, test } from 'vitest';
import { inlandEngland, makeWeather } from './weather.ts';

const start = Date.parse('2027-01-01T00:00:00Z') / 1000;
const make = (seed: number, days: number, step = 600) =>
  makeWeather(seed, inlandEngland, { latitude: 52.2, longitude: -1.5 }, start, start + days * 86400, step);
const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('makeWeather', () => {
  test('the same seed gives the same weather, another seed other weather', () => {
    expect(make(3, 5)).toEqual(make(3, 5));
    expect(make(3, 5).windSpeed).not.toEqual(make(4, 5).windSpeed);
  });

  test('a finer step sees the same wind at shared instants', () => {
    const coarse = make(3, 5, 600);
    const fine = make(3, 5, 60);
    for (let k = 0; k < coarse.windSpeed.length; k++)
      expect(fine.windSpeed[10 * k]).toBeCloseTo(coarse.windSpeed[k], 9);
  });

  test('over many Januaries it keeps to its climate', () => {
    const years = Array.from({ length: 40 }, (_, seed) => make(seed, 31));
    const { meanTemperature, seasonalSwing, synopticDeviation, meanWindSpeed } = inlandEngland;
    // Clear nights take up to half a kelvin; a month of 2.5-day memory scatters by about a kelvin, 40 by 0.2.
    const temperature = mean(Float64Array.from(years, (year) => mean(year.airTemperature)));
    expect(Math.abs(temperature - (meanTemperature - seasonalSwing))).toBeLessThan(
      0.5 + 0.15 * synopticDeviation,
    );
    const wind = mean(Float64Array.from(years, (year) => mean(year.windSpeed)));
    expect(Math.abs(wind / meanWindSpeed - 1)).toBeLessThan(0.1);
  });

  test('stays possible: cloud from 0 to 1, dew point below the air, no sun at midnight', () => {
    const weather = make(11, 31);
    weather.cloud.forEach((cloud, k) => {
      expect(cloud).toBeGreaterThanOrEqual(0);
      expect(cloud).toBeLessThanOrEqual(1);
      expect(weather.dewPoint[k]).toBeLessThan(weather.airTemperature[k]);
      expect(weather.diffuse[k]).toBeLessThanOrEqual(weather.global[k]);
      if ((k * 600) % 86400 === 0) expect(weather.global[k]).toBe(0);
    });
  });
});
