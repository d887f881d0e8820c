import { expect, test } from 'vitest';
import type { JudgedNight, StageNights } from '../../src/cooling/index.ts';
import { dryingSd, vapourExcess } from '../../src/heatloss/drying.ts';
import type { House } from '../../src/house.ts';
import type { HouseRecord } from '../../src/series/record.ts';

/** An invented night of twelve instants: 20 °C inside, 5 °C and 80 % outdoors. */
function nightAt(insideHumidity: number | null): { record: HouseRecord; stage: StageNights } {
  const all = (value: number) => new Float64Array(12).fill(value);
  const room = { file: 'a.csv', room: 'Kitchen' };
  const record: HouseRecord = {
    grid: { start: 0, step: 600, length: 12 },
    rooms: [
      {
        ...room,
        place: 'inside',
        temperature: all(20),
        relativeHumidity: insideHumidity === null ? null : all(insideHumidity),
      },
      { ...room, place: 'outside', temperature: all(5), relativeHumidity: all(0.8) },
    ],
    insideTemperature: all(20),
    outsideTemperature: all(5),
    differenceSd: 0.2,
    insideResolution: 0.1,
    windSpeed: null,
    irradiance: null,
    heatingPower: null,
    heatingPowerSd: 0,
  };
  const night: JudgedNight = {
    night: { date: '2027-01-09', noon: 0, sunset: 0, sunrise: 6600 },
    window: { first: 0, last: 11 },
    fit: null,
    drop: null,
    meanDifference: null,
    drivingDifference: null,
    duration: null,
    heated: false,
    used: true,
    reasons: [],
  };
  const stage = {
    name: 'All',
    from: 0,
    to: 6600,
    complete: true,
    missing: [],
    nights: [night],
    crossing: [],
  };
  return { record, stage };
}

/** 24 W/K at 0.33 Wh/(m³K). */
const AIR = { flow: 24 / (0.33 * 3600), assumed: false };
const excessAt = (humidity: number | null) => {
  const { record, stage } = nightAt(humidity);
  return vapourExcess(record, stage, AIR);
};

test('at 20 °C and 60 % over 5 °C and 80 % the air holds 4.93 g/m³ more, and takes 244 W along', () => {
  // COMPUTED by ISO 13788:2012, 3.1 with its saturation pressures 2337 and 872 Pa: v = p/(461.5·T); Q = v·(H_V/1188)·2.45 MJ/kg.
  // Tolerance: what the rounded saturation pressures leave.
  const excess = excessAt(0.6);
  expect((excess?.density ?? 0) * 1000).toBeCloseTo(4.93, 1);
  expect((excess?.heat ?? 0) / 244).toBeCloseTo(1, 2);
});

test('ten litres a day draw about 280 W', () => {
  // COMPUTED: 10 kg · 2.45 MJ/kg / 86,400 s = 283.6 W.
  const { rate, heat } = excessAt(0.6) ?? { rate: 1, heat: 0 };
  expect((heat * (10 / 86_400)) / rate).toBeCloseTo(283.6, 1);
});

test('the air of a dwelling in use is nothing unusual, that of a drying one is', () => {
  expect([excessAt(0.45)?.unusual, excessAt(0.6)?.unusual]).toEqual([false, true]);
});

test('without humidity on both sides nothing is said', () => {
  expect(excessAt(null)).toBeNull();
});

const told = (weeks: number | undefined) =>
  ({ conditions: weeks === undefined ? {} : { wetTradesWithinWeeks: weeks } }) as House;

test('what the air shows widens more than what was told, and widens where nothing was', () => {
  const wet = excessAt(0.6);
  expect(dryingSd(told(undefined), [wet])).toBeCloseTo(wet?.heat ?? 0, 9);
  expect(dryingSd(told(8), [wet])).toBeCloseTo(wet?.heat ?? 0, 9);
  expect(dryingSd(told(8), [null])).toBeLessThan(wet?.heat ?? 0);
});

test('nine weeks after wet trades, in ordinary air, nothing is widened', () => {
  expect(dryingSd(told(9), [excessAt(0.45)])).toBe(0);
});
