import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { assessCommand } from '../../server/assessCommand.ts';
import schema from '../../src/assessment.schema.json' with { type: 'json' };
import type { Assessment } from '../../src/assessment.ts';

const folderOfTests = new URL('..', import.meta.url).pathname;
const sample = join(folderOfTests, '../sample-logs');
const solarHouse = join(folderOfTests, 'real-logs/solar-house-2012');

async function run(...args: string[]) {
  const written = { out: '', err: '' };
  const code = await assessCommand(
    args,
    {
      write: (text) => {
        written.out += text;
      },
    },
    {
      write: (text) => {
        written.err += text;
      },
    },
  );
  return { code, ...written, assessment: (): Assessment => JSON.parse(written.out) };
}

/** Ten-minute readings over invented January nights: 20 °C by day, an exponential fall from 20:00. */
function log(temperatureAt: (hour: number) => number, nights = 3): string {
  const rows = Array.from({ length: nights * 144 }, (_, i) => {
    const time = new Date(Date.UTC(2027, 0, 10, 12) + i * 600_000);
    return `${time.toISOString().slice(0, 16).replace('T', ' ')},${temperatureAt(12 + i / 6).toFixed(2)}`;
  });
  return ['Time,Temperature (°C)', ...rows].join('\n');
}
const inside = log((hour) => {
  const since = (hour % 24) - 20 + (hour % 24 < 12 ? 24 : 0);
  return since < 0 || since > 11 ? 20 : 5 + 15 * Math.exp(-since / 40);
});
const outside = log(() => 5);

const house = {
  name: 'Test house',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [
    { file: 'in.csv', place: 'inside', room: 'Hall' },
    { file: 'out.csv', place: 'outside' },
  ],
};

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillwarm-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

async function write(files: Record<string, string | Uint8Array>) {
  for (const [file, content] of Object.entries(files)) await writeFile(join(folder, file), content);
}

describe('exit code 2, with what to do on standard error and nothing on standard output', () => {
  test('when there is no house.json', async () => {
    const { code, out, err } = await run(folder, '--json');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/there is no house\.json here/);
  });

  test('when house.json has an unknown key', async () => {
    await write({
      'house.json': JSON.stringify({ ...house, florAreaM2: 96 }),
      'in.csv': inside,
      'out.csv': outside,
    });
    const { code, out, err } = await run(folder);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/house\.json, line 1, florAreaM2: .*Did you mean “floorAreaM2”\?/);
  });

  test('when there is no outdoor temperature', async () => {
    await write({ 'house.json': JSON.stringify(house), 'in.csv': inside });
    const { code, err } = await run(folder);
    expect(code).toBe(2);
    expect(err).toMatch(/No outdoor temperature remains/);
    expect(err).toMatch(/out\.csv/);
  });

  test('when no inside log can be read', async () => {
    await write({ 'house.json': JSON.stringify(house), 'in.csv': 'nothing to see', 'out.csv': outside });
    const { code, err } = await run(folder);
    expect(code).toBe(2);
    expect(err).toMatch(/No readable inside temperature remains/);
  });

  test('when a stage is asked for that does not exist', async () => {
    await write({ 'house.json': JSON.stringify(house), 'in.csv': inside, 'out.csv': outside });
    const { code, err } = await run(folder, '--stage', 'Later');
    expect(code).toBe(2);
    expect(err).toMatch(/The stages are “Whole record”/);
  });

  test('when no folder or two are named, or an option is misspelt', async () => {
    expect((await run()).code).toBe(2);
    expect((await run(folder, folder)).code).toBe(2);
    expect((await run(folder, '--jsn')).code).toBe(2);
  });
});

describe('exit code 0 with a warning, and the rest assessed', () => {
  const more = {
    ...house,
    loggers: [...house.loggers, { file: 'bed.csv', place: 'inside', room: 'Bedroom' }],
  };

  test.each([
    ['is missing', null, 'file-missing'],
    ['is empty', '', 'file-empty'],
    ['has no time', 'Temperature (°C)\n20.1\n20.0\n19.9\n', 'no-time-column'],
    [
      'is a picture',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]),
      'file-not-text',
    ],
  ])('when one of several logs %s', async (_, content, warning) => {
    await write({ 'house.json': JSON.stringify(more), 'in.csv': inside, 'out.csv': outside });
    if (content !== null) await write({ 'bed.csv': content });
    const { code, err, assessment } = await run(folder, '--json');
    expect(code).toBe(0);
    expect(err).toMatch(/bed\.csv/);
    expect(assessment().warnings.map((it) => it.code)).toContain(warning);
    expect(assessment().stages[0].timeConstantH?.value).toBeCloseTo(40, 0);
  });

  test('when a log is a folder', async () => {
    await write({ 'house.json': JSON.stringify(more), 'in.csv': inside, 'out.csv': outside });
    await mkdir(join(folder, 'bed.csv'));
    const { code, assessment } = await run(folder, '--json');
    expect(code).toBe(0);
    expect(assessment().warnings.map((it) => it.code)).toContain('file-not-taken');
  });
});

describe('without a design', () => {
  test('the house gets a time constant and no gap', async () => {
    await write({ 'house.json': JSON.stringify(house), 'in.csv': inside, 'out.csv': outside });
    const [{ gap, timeConstantH, tier, heatLossWK }] = (await run(folder, '--json')).assessment().stages;
    expect([gap, tier, heatLossWK]).toEqual([null, 'none', null]);
    expect(timeConstantH?.value).toBeCloseTo(40, 0);
  });
});

describe('odd houses', () => {
  const elements = [{ name: 'Party wall', areaM2: 10, uValue: 1, to: 'adjacent' }];

  test('a design that loses nothing has no ratio', async () => {
    await write({
      'house.json': JSON.stringify({ ...house, floorAreaM2: 90, elements }),
      'in.csv': inside,
      'out.csv': outside,
    });
    const [{ gap, heatLossWK }] = (await run(folder, '--json')).assessment().stages;
    expect(heatLossWK).not.toBeNull();
    expect(gap).toBeNull();
  });

  test('inside and outside swapped end without a figure and without a verdict', async () => {
    await write({
      'house.json': JSON.stringify({
        ...house,
        floorAreaM2: 90,
        elements: [{ name: 'Walls', areaM2: 100, uValue: 0.2 }],
      }),
      'in.csv': outside,
      'out.csv': inside,
    });
    const [{ gap, heatLossWK, timeConstantH }] = (await run(folder, '--json')).assessment().stages;
    expect([gap, heatLossWK, timeConstantH]).toEqual([null, null, null]);
  });

  test('stages before the record say so and invent nothing', async () => {
    const stages = [{ name: 'Long ago', from: '2020-01-01', to: '2020-02-01' }];
    await write({ 'house.json': JSON.stringify({ ...house, stages }), 'in.csv': inside, 'out.csv': outside });
    const [{ nights, timeConstantH, notes }] = (await run(folder, '--json')).assessment().stages;
    expect([nights, timeConstantH]).toEqual([[], null]);
    expect(notes.map(({ code }) => code)).toContain('stage-outside-record');
  });

  test('where the sun does not set there is no night and no figure', async () => {
    const location = { latitude: 75, longitude: 20, timeZone: 'UTC' };
    await write({
      'house.json': JSON.stringify({ ...house, location }),
      'in.csv': inside,
      'out.csv': outside,
    });
    expect((await run(folder, '--json')).assessment().stages[0].nights).toEqual([]);
  });
});

describe('the JSON', () => {
  const validate = new Ajv2020({ strict: false }).compile(schema);

  test.each([
    ['the demonstration house', sample],
    ['the solar house of 2012', solarHouse],
  ])('of %s is as the published schema has it', async (_, path) => {
    const { code, assessment } = await run(path, '--json');
    expect(code).toBe(0);
    validate(assessment());
    expect(validate.errors).toBeNull();
  });

  test('with --stage has that stage alone', async () => {
    const whole = (await run(sample, '--json')).assessment();
    const [first] = whole.stages;
    const one = (await run(sample, '--json', '--stage', first.name)).assessment();
    expect(one.stages).toEqual([first]);
  });
});

test('the readable summary gives the measured and the drawn heat loss, the nights and a plot', async () => {
  const { code, out } = await run(sample);
  expect(code).toBe(0);
  expect(out).toMatch(/Heat loss, measured\s+\d+ to \d+ W\/K \(\d+\)/);
  expect(out).toMatch(/Heat loss, as drawn\s+\d/);
  expect(out).toMatch(/Where the width of the interval comes from:\n {2}- .+: \d+ %/);
  expect(out).toMatch(/o inside {3}- fitted {3}\. outside/);
  expect(out).toMatch(/A result is evidence, not a certificate/);
});

test('the readable summary names the room that cools fastest, and warns where it matters when one begins', async () => {
  const sinceEvening = (hour: number) => (hour % 24) - 20 + (hour % 24 < 12 ? 24 : 0);
  const falling = (fall: (since: number) => number) =>
    log((hour) => {
      const since = sinceEvening(hour);
      return since < 0 || since > 11 ? 20 : 5 + 15 * fall(since);
    }, 8);
  await write({
    'house.json': JSON.stringify({
      ...house,
      loggers: [...house.loggers, { file: 'attic.csv', place: 'inside', room: 'Attic' }],
    }),
    'in.csv': falling((since) => 0.85 * Math.exp(-since / 80) + 0.15 * Math.exp(-since / 2)),
    'attic.csv': falling((since) => 0.85 * Math.exp(-since / 40) + 0.15 * Math.exp(-since / 2)),
    'out.csv': log(() => 5, 8),
  });
  const { out } = await run(folder);
  expect(out).toMatch(/“Attic” cools fastest/);
  expect(out).toMatch(/The time constant depends on when one begins/);
});

test('the readable summary writes degrees as people do', async () => {
  await write({ 'house.json': JSON.stringify(house), 'in.csv': inside, 'out.csv': outside });
  expect((await run(folder)).out).toMatch(/temperature from “Temperature \(°C\)”: 5\.0 to 5\.0 °C\n/);
});
