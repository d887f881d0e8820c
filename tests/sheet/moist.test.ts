import { expect, test } from 'vitest';
import { moistMeans } from '../../src/record/moistMeans.ts';
import type { HouseRecord, RoomSeries } from '../../src/series/record.ts';
import { sheetHtml } from '../../src/sheet/index.ts';
import { inventedInput } from './inputs.ts';

const room = (
  file: string,
  temperature: readonly number[],
  humidity: readonly number[] | null,
): RoomSeries => ({
  file,
  room: file,
  place: 'inside',
  temperature: Float64Array.from(temperature),
  relativeHumidity: humidity && Float64Array.from(humidity),
});

const record = {
  grid: { start: 0, step: 600, length: 4 },
  rooms: [
    room('moist', [10, 20, 20, Number.NaN], [0.9, 0.5, 0.5, 0.5]),
    room('dry', [20, 20, 20, 20], null),
    room('silent', [20, 20, 20, 20], [Number.NaN, Number.NaN, Number.NaN, Number.NaN]),
  ],
} as unknown as HouseRecord;

test('the mean air of some hours is that of the cells in which temperature and humidity are known', () => {
  const [only, ...others] = moistMeans(record, 600, 1800);
  expect(others).toEqual([]);
  expect(only).toMatchObject({ file: 'moist', temperature: 20, relativeHumidity: 0.5 });
  // COMPUTED: half of 2337 Pa (saturation at 20 °C, ISO 13788) over 461.5 J/(kgK) · 293.15 K.
  expect(only.absoluteHumidity * 1000).toBeCloseTo(8.637, 2);
});

test('a house without humidity has no word of it on its sheet', () => {
  expect(sheetHtml(inventedInput())).not.toContain('How moist the air was');
});

test('a house with it inside alone has its table and picture, and is not told what it holds over outdoors', () => {
  const input = inventedInput();
  const moist = moistMeans(record, 600, 1800);
  const sheet = sheetHtml({ ...input, curves: input.curves.map((it) => ({ ...it, moist })) });
  expect(sheet).toContain('How moist the air was');
  expect(sheet).toContain('8.6\u00a0g/m³');
  expect(sheet).toContain('No logger outdoors had humidity');
  expect(sheet).toContain('Water in the air, the mean of each night. moist: 8.6 at first, 8.6 g/m³ at last.');
});
