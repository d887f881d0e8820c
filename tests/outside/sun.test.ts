/**
 * Sunrise, sunset and the sun's position. Times: NREL's Solar Position Algorithm and the US Naval Observatory,
 * READ in the pvlib-python tests; almanac values for London, READ in the astral library's tests. Positions: Reda
 * and Andreas, NREL/TP-560-34302, Appendix A, READ in the pvlib-python tests; two more COMPUTED with that code.
 */
import { describe, expect, test } from 'vitest';
import { sunPosition } from '../../src/sky/sunPosition.ts';
import { sunTimes } from '../../src/sky/sunTimes.ts';
import { instantOf } from '../../src/sky/zone.ts';

const place = (latitude: number, longitude: number, timeZone: string) => ({ latitude, longitude, timeZone });
const mountains = place(39, -105, 'Etc/GMT+7');
const beijing = place(39.917, 116.383, 'Asia/Shanghai');
const london = place(51.5, -0.1333, 'Europe/London');
const golden = place(39.7425, -105.1786, 'Etc/GMT+7');

describe('the sun rises and sets to the second of the almanac', () => {
  // 5 s: both sides use a refraction of 34′ and a radius of 16′, but theirs moves with the distance of the sun
  test.each([
    ['1994-01-02', place(35, 0, 'UTC'), '07:08:12', '16:59:55'], // READ
    ['1996-07-05', place(-35, 0, 'UTC'), '07:08:15', '17:01:04'], // READ
    ['2015-01-02', golden, '07:21:55', '16:47:43'], // READ
  ] as const)('%s at %o: %s and %s', (date, where, rise, set) => {
    expectTimes(date, where, rise, set, 5);
  });
});

describe('the sun rises and sets to the minute of the almanac', () => {
  // 60 s: some sources cut off the seconds, others round
  test.each([
    ['2015-01-02', mountains, '07:19', '16:49'], // READ
    ['2015-08-02', mountains, '05:01', '19:10'], // READ
    ['2015-04-02', beijing, '05:58', '18:39'], // READ
    ['2015-12-02', beijing, '07:17', '16:50'], // READ
    ['2015-01-01', london, '08:06', '16:01'], // READ
    ['2015-12-12', london, '07:56', '15:51'], // READ
  ] as const)('%s at %o: %s and %s', (date, where, rise, set) => {
    expectTimes(date, where, rise, set, 60);
  });
});

function expectTimes(date: string, where: typeof london, rise: string, set: string, tolerance: number) {
  const { sunrise, sunset } = sunTimes(date, where);
  const off = (instant: number | null, clock: string) =>
    Math.abs((instant ?? Number.NaN) - instantOf(`${date}T${clock}`, where.timeZone));
  expect(off(sunrise, rise)).toBeLessThan(tolerance);
  expect(off(sunset, set)).toBeLessThan(tolerance);
}

test("the sun's noon is that of the almanac", () => {
  const off = (date: string, where: typeof london, clock: string) =>
    Math.abs(sunTimes(date, where).noon - instantOf(`${date}T${clock}`, where.timeZone));
  expect(off('1996-07-05', place(-35, 0, 'UTC'), '12:04:36')).toBeLessThan(5); // READ
  expect(off('2015-01-02', golden, '12:04:45')).toBeLessThan(5); // READ
  expect(off('2015-12-12', london, '11:54')).toBeLessThan(60); // READ, to the minute
});

test('at 69.6° north the sun does not rise on 21 December and does not set on 21 June', () => {
  const north = place(69.6, 18.95, 'Europe/Oslo');
  expect(sunTimes('2015-12-21', north)).toMatchObject({ sunrise: null, sunset: null }); // COMPUTED
  expect(sunTimes('2015-06-21', north)).toMatchObject({ sunrise: null, sunset: null }); // COMPUTED
});

describe('the sun stands where the Solar Position Algorithm has it', () => {
  // 0.01°: the short series of Meeus without nutation in full and parallax, and a refraction for one air
  // pressure (1010 mbar, where the first row has 820 mbar and so 0.004° less)
  test.each([
    ['2003-10-17T19:30:30Z', 39.742476, -105.1786, 39.888378, 194.340241], // READ
    ['2026-12-21T12:00:00Z', 51.4779, 0, 15.1423, 180.4598], // COMPUTED
    ['2027-03-20T09:00:00Z', 55.95, -3.19, 20.9314, 124.8235], // COMPUTED
  ])('%s at %d, %d: elevation %d°, azimuth %d°', (instant, latitude, longitude, elevation, azimuth) => {
    const sun = sunPosition(Date.parse(instant) / 1000, { latitude, longitude });
    expect(Math.abs((sun.elevation * 180) / Math.PI - elevation)).toBeLessThan(0.01);
    expect(Math.abs((sun.azimuth * 180) / Math.PI - azimuth)).toBeLessThan(0.01);
  });
});
