/**
 * A whole folder without a logger inside: ten weeks of hourly heat load, outdoor temperature and irradiance, as a
 * heating system writes them. Everything here is invented, and its truth is known because it was made from it.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { assessCommand } from '../../server/assessCommand.ts';
import type { Assessment } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { clearSkyIrradiance } from '../../src/sky/irradiance.ts';
import { sunPosition } from '../../src/sky/sunPosition.ts';

const HEAT_LOSS = 150; // [W/K]
const APERTURE = 2.5; // [m²]
/** Warmer than house.json says, as thermostats are. */
const INSIDE = 20.6; // [°C]
const WEEKS = 10;
const HOUR = 3600;
const start = Date.UTC(2027, 0, 4) / 1000;
const location = { latitude: 53, longitude: -2, timeZone: 'UTC' };

const rowsOf = (values: (hour: number) => string) =>
  Array.from({ length: WEEKS * 7 * 24 + 1 }, (_, hour) => {
    const stamp = new Date((start + hour * HOUR) * 1000).toISOString().slice(0, 16).replace('T', ' ');
    return `${stamp},${values(hour)}`;
  });
const outside = (hour: number) =>
  4 + 3.5 * Math.sin((2 * Math.PI * (hour - 9)) / 24) + 4 * Math.sin(hour / 37) + 2 * Math.sin(hour / 101);
const sun = (hour: number) => {
  const clearness = 0.2 + 0.7 * Math.abs(Math.sin(Math.floor(hour / 24) * 2.4));
  return clearness * clearSkyIrradiance(sunPosition(start + (hour - 0.5) * HOUR, location));
};
const heat = (hour: number) => Math.max(0, HEAT_LOSS * (INSIDE - outside(hour)) - APERTURE * sun(hour));

const weatherFile = [
  'Time,Temperature (°C),Global irradiance (W/m²)',
  ...rowsOf((hour) => `${outside(hour).toFixed(1)},${sun(hour).toFixed(0)}`),
].join('\n');
const heatFile = ['Time,Heat (kWh)', ...rowsOf((hour) => (heat(hour) / 1000).toFixed(3))].join('\n');

const house: House = {
  name: 'Invented house without a logger',
  location,
  floorAreaM2: 90,
  loggers: [],
  weather: [{ file: 'weather.csv' }],
  heat: [{ file: 'heat.csv', kind: 'energy', unit: 'kWh' }],
  conditions: { insideC: 20, ventsClosed: true },
  elements: [
    { name: 'Shell', areaM2: 240, uValue: 0.5 },
    { name: 'Windows', areaM2: 14, uValue: 1.4, gValue: 0.6 },
  ],
};

let folder = '';
const run = async (of: House, args: readonly string[] = []) => {
  await writeFile(join(folder, 'house.json'), JSON.stringify(of));
  const out: string[] = [];
  const err: string[] = [];
  const code = await assessCommand(
    [folder, ...args],
    { write: (text) => out.push(text) },
    { write: (text) => err.push(text) },
  );
  return { code, out: out.join(''), err: err.join('') };
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'no-inside-'));
  await writeFile(join(folder, 'weather.csv'), weatherFile);
  await writeFile(join(folder, 'heat.csv'), heatFile);
});
afterAll(() => rm(folder, { recursive: true }));

describe('a house folder with heat and weather and no logger inside', () => {
  let assessment: Assessment;
  let code: number;
  beforeAll(async () => {
    const done = await run(house, ['--json']);
    ({ code } = done);
    assessment = JSON.parse(done.out);
  });

  test('is assessed: the command ends with 0', () => {
    expect(code).toBe(0);
  });

  test('its daily balance holds the true heat loss and lies within 8 % of it', () => {
    const [{ heatLossWK, tier }] = assessment.stages;
    expect(tier).toBe('metered');
    expect(heatLossWK?.method).toBe('heat-balance');
    expect(heatLossWK?.low).toBeLessThan(HEAT_LOSS);
    expect(heatLossWK?.high).toBeGreaterThan(HEAT_LOSS);
    // 0.6 K of some 16 K are 4 %; the rest is what the constant may hide beside
    expect(Math.abs((heatLossWK?.value ?? 0) / HEAT_LOSS - 1)).toBeLessThan(0.08);
  });

  test('says that the inside temperature is assumed, and the interval is no narrower than that allows', () => {
    const [{ estimates, heatLossWK }] = assessment.stages;
    const balance = estimates.find(({ method }) => method === 'heat-balance');
    expect(balance?.notes.map((note) => note.code)).toContain('inside-assumed');
    // 2 K of some 16 K either way at 95 %
    const { value = 1, low = 1 } = heatLossWK ?? {};
    expect(1 - low / value).toBeGreaterThan(0.1);
  });

  test('judges no night: each says that nothing was logged inside, and no time constant is given', () => {
    const [{ nights, timeConstantH, estimates }] = assessment.stages;
    expect(nights.length).toBeGreaterThan(60);
    for (const { used, reasons } of nights) {
      expect(used).toBe(false);
      expect(reasons.map((reason) => reason.code)).toEqual(['no-inside-readings']);
    }
    expect(timeConstantH).toBeNull();
    expect(estimates.map(({ method }) => method)).toEqual(['heat-balance']);
  });

  test('is told in words as well', async () => {
    const { out } = await run(house);
    expect(out).toContain('Nothing was logged inside: the house is taken to be at 20.0 °C');
  });

  test('with a logger outside only is assessed alike', async () => {
    const { code: ended, out } = await run(
      { ...house, loggers: [{ file: 'weather.csv', place: 'outside' }] },
      ['--json'],
    );
    expect(ended).toBe(0);
    const { low = 0, high = 0 } = (JSON.parse(out) as Assessment).stages[0].heatLossWK ?? {};
    expect(low).toBeLessThan(HEAT_LOSS);
    expect(high).toBeGreaterThan(HEAT_LOSS);
  });

  test('without any heat still ends with 0 and gives no figure', async () => {
    const { heat: _, ...unheated } = house;
    const { code: ended, out } = await run(unheated, ['--json']);
    expect(ended).toBe(0);
    expect((JSON.parse(out) as Assessment).stages[0].heatLossWK).toBeNull();
  });
});

test('a house without loggers that states no inside temperature is refused at its key', () => {
  const { conditions: _, ...unknown } = house;
  const read = readHouse(JSON.stringify(unknown));
  expect(read.kind === 'problems' && read.problems.map(({ where }) => where.key)).toEqual(['loggers']);
});
