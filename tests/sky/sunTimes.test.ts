import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sunPosition } from '../../src/sky/sunPosition.ts';
import { sunTimes, sunTimesNear } from '../../src/sky/sunTimes.ts';
import { localDate } from '../../src/sky/zone.ts';

const places = fc.constantFrom(
  { latitude: 51.5, longitude: -0.13, timeZone: 'Europe/London' },
  { latitude: 39.74, longitude: -105.18, timeZone: 'America/Denver' },
  { latitude: -36.85, longitude: 174.76, timeZone: 'Pacific/Auckland' },
  { latitude: -0.2, longitude: -78.5, timeZone: 'America/Guayaquil' },
);
const instants = fc.integer({ min: 1_600_000_000, max: 1_900_000_000 });

test('sunrise, noon and sunset lie in that order on the local date that was asked for', () => {
  fc.assert(
    fc.property(instants, places, (instant, place) => {
      const date = localDate(instant, place.timeZone);
      const { sunrise, noon, sunset } = sunTimes(date, place);
      expect(sunrise).toBeLessThan(noon);
      expect(sunset).toBeGreaterThan(noon);
      for (const it of [sunrise, noon, sunset])
        expect(localDate(it ?? Number.NaN, place.timeZone)).toBe(date);
    }),
  );
});

test('the solar day found is the one whose noon is nearest', () => {
  fc.assert(
    fc.property(instants, places, (instant, place) => {
      // half a day, and 17 minutes for the equation of time, which suncalc leaves out where it picks the day
      expect(Math.abs(sunTimesNear(instant, place).noon - instant)).toBeLessThan(43_200 + 17 * 60);
    }),
  );
});

test('when the sun sets it is seen at the horizon, and at its noon it stands in the south or north', () => {
  fc.assert(
    fc.property(instants, places, (instant, place) => {
      const { noon, sunset } = sunTimesNear(instant, place);
      // the rim touches the horizon: the centre is seen 16′ below it. Of the usual refraction of 34′ suncalc's
      // formula has 29′ there; 1′ for the turning of the earth between its last two approximations
      const elevation = (sunPosition(sunset ?? Number.NaN, place).elevation * 180) / Math.PI;
      expect(Math.abs(elevation - -16 / 60)).toBeLessThan(6 / 60);
      // 0.001 is 0.06°: the sun crosses the meridian at some 15° an hour and more where it stands high
      fc.pre(Math.abs(place.latitude) > 30);
      expect(Math.abs(Math.sin(sunPosition(noon, place).azimuth))).toBeLessThan(1e-3);
    }),
  );
});
