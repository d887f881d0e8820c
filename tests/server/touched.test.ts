/** What a change of a house's files leaves alone in the store, and that what is then stored is that of the whole folder. */
import { join } from 'node:path';
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { AddedExport } from '../../server/api/shapes.ts';
import { DATABASE_FILE } from '../../server/store/database.ts';
import type { HouseToStore } from '../../server/store/houseToStore.ts';
import { contentOf } from '../faults/kills/content.ts';
import { asJson, heldCalculation, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

const parts = { calculate: heldCalculation().calculate }; // nothing is assessed here
let server: ServerAtHand;
let id: string;
beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['Date'] });
  server = serverAtHand(parts);
  id = await server.bring(folder);
});
afterEach(async () => {
  vi.useRealTimers();
  await server.end();
});

/** A row each half an hour from 2027-01-09T22:00Z on: two days and a half lie on four UTC days. */
const ROWS = 120;
const instant = (i: number) => new Date(Date.UTC(2027, 0, 9, 22) + i * 1_800_000).toISOString();
const iso = (i: number) => instant(i).slice(0, 16).replace('T', ' ');
const written = (shape: RegExp, as: string) => (i: number) => iso(i).replace(shape, as);
const DATE = /\d\d(\d\d)-(\d\d)-(\d\d)/;
const dayFirst = written(DATE, '$3/$2/20$1');
const monthFirst = written(DATE, '$2/$3/20$1');
/** This row is doubted beside those around it, and not by itself. */
const SPIKE = 30;
/** With this seed only °F explains them, which tells of those that do not name their unit. */
const FAHRENHEIT = 6;
const value = (i: number, seed: number) => {
  if ((i + seed) % 41 === 40) return '999';
  if (i === SPIKE) return '45.00';
  const warmth = 18 + 3 * Math.sin(i / 9 + seed) + (i % 5) / 10;
  return (seed === FAHRENHEIT ? 32 + 1.8 * warmth : warmth).toFixed(2);
};

interface Kind {
  readonly header: string;
  readonly time: (i: number) => string;
  /** How many columns of values. */
  readonly columns: number;
}
const kinds: Readonly<Record<string, Kind>> = {
  'in.csv': { header: 'Time,Temperature (°C)', time: iso, columns: 1 },
  'logs/out.csv': { header: 'Time,Temperature (°C),Humidity (%)', time: iso, columns: 2 },
  // What is added to it tells the others how dates are written.
  'teller.csv': { header: 'Time,Temperature (°C)', time: monthFirst, columns: 1 },
  'asker.csv': { header: 'Time,Temperature', time: dayFirst, columns: 1 },
  'shared.csv': { header: 'Time,Hall (°C),Loft (°C)', time: iso, columns: 2 },
};
const names = Object.keys(kinds);
const logOf = (file: string, from: number, to: number, seed: number, time = kinds[file].time) => {
  const { header, columns } = kinds[file];
  const rows = Array.from({ length: to - from }, (_, k) =>
    [time(from + k), ...Array.from({ length: columns }, (_, c) => value(from + k, seed + 7 * c))].join(','),
  );
  return [header, ...rows, ''].join('\n');
};
const house = {
  name: 'Touched',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [
    { file: 'in.csv', place: 'inside', room: 'Hall' },
    { file: 'shared.csv', place: 'inside', room: 'Landing', columns: { temperature: 'Hall (°C)' } },
    { file: 'logs/out.csv', place: 'outside' },
    { file: 'shared.csv', place: 'inside', room: 'Loft', columns: { temperature: 'Loft (°C)' } },
    { file: 'teller.csv', place: 'inside', room: 'Bed' },
    { file: 'asker.csv', place: 'inside', room: 'Bath' },
  ],
};
const folder: Readonly<Record<string, string>> = {
  'house.json': JSON.stringify(house),
  ...Object.fromEntries(names.map((file, seed) => [file, logOf(file, 0, ROWS, seed)])),
  'teller.csv': logOf('teller.csv', 0, ROWS, 2, iso),
  'asker.csv': logOf('asker.csv', 4, 52, 3), // of one day: which is the month?
};

const post = async (file: string, body: string) => {
  const response = await server.ask(`/api/houses/${id}/readings?file=${encodeURIComponent(file)}`, {
    method: 'POST',
    headers: { 'Content-Type': 'text/csv' },
    body,
  });
  return [response.status, (await response.json()) as AddedExport] as const;
};
const undo = () => server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
async function bringOnto(files: Readonly<Record<string, string>>) {
  const bringing = await server.begin(id);
  await bringing.put(files);
  return (await bringing.keep()).status;
}

/** All that follows from the files of the only house of a database, without the numbers that it goes by. */
function stored({ db, folder }: ServerAtHand): unknown {
  const channels = db
    .prepare(
      'SELECT file, column_name, room, place, quantity, spacing_s, first_s, last_s FROM channel ORDER BY number',
    )
    .all();
  const days = db
    .prepare('SELECT day, n, min, max, sum FROM day JOIN channel ON number = channel ORDER BY number, day')
    .all();
  return { channels, days, content: JSON.parse(contentOf(join(folder, DATABASE_FILE)))[0].channels };
}
/** The same of the folder as it now is, brought into a database of its own. */
async function broughtAnew(): Promise<unknown> {
  const zip = await server.ask(`/api/houses/${id}/folder.zip`);
  const other = serverAtHand(parts);
  await other.bring(unzipSync(new Uint8Array(await zip.arrayBuffer())));
  const all = stored(other);
  await other.end();
  return all;
}

const daysStored = () =>
  server.db
    .prepare<[], string>(
      "SELECT channel || ' on ' || day || ' in ' || rowid || ' of ' || length(readings) FROM day_readings ORDER BY channel, day",
    )
    .pluck()
    .all();

test('a posting, and taking it back, write the days that they touch and leave the rows of all others', async () => {
  const before = daysStored();
  expect((await post('in.csv', logOf('in.csv', ROWS, ROWS + 3, 0)))[0]).toBe(200);
  const after = daysStored();
  expect(after.filter((it) => !before.includes(it))).toHaveLength(1);
  expect(before.filter((it) => !after.includes(it))).toHaveLength(1);
  expect((await undo()).status).toBe(200);
  const again = daysStored();
  expect(again.filter((it) => !after.includes(it))).toHaveLength(1);
  expect(await broughtAnew()).toEqual(stored(server));
});

test.each([
  ['day from month', 'teller.csv', logOf('teller.csv', ROWS, ROWS + 100, 2)],
  ['its unit', 'in.csv', logOf('in.csv', ROWS, ROWS + 9, FAHRENHEIT).replace(' (°C)', '')],
])('a posted log that tells %s has another logger read anew that left it open', async (_, file, log) => {
  const asker = () =>
    server.db
      .prepare("SELECT day, min, max FROM day JOIN channel ON number = channel WHERE file = 'asker.csv'")
      .all();
  const before = asker();
  expect((await post(file, log))[0]).toBe(200);
  expect(asker()).not.toEqual(before);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a logger that is read otherwise, and so tells the others another order of dates, has them read anew when that is taken back', async () => {
  const json = new TextDecoder().decode(server.services.reading.json(id) ?? new Uint8Array());
  const later = logOf('teller.csv', 0, ROWS + 100, 2); // by itself it tells that the month comes first
  await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
  id = await server.bring({ ...folder, 'teller.csv': later });
  const answered = json.replace('"teller.csv",', '"teller.csv","read":{"dateOrder":"month-first"},');
  expect(await bringOnto({ 'house.json': answered })).toBe(201);
  expect(stored(server)).toEqual(await broughtAnew());
  expect((await undo()).status).toBe(200);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a file that the house names for another logger, and that has not come yet, is read for both when it is posted', async () => {
  await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
  const { loggers } = house;
  const toCome = { file: 'in (2).csv', place: 'inside', room: 'Attic' };
  const named = JSON.stringify({ ...house, loggers: [...loggers, toCome] });
  id = await server.bring({ ...folder, 'house.json': named });
  expect((await post('in.csv', logOf('in.csv', ROWS, ROWS + 3, 0)))[0]).toBe(200);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a posted log that leaves day and month open is read as the others tell', async () => {
  await post('teller.csv', logOf('teller.csv', ROWS, ROWS + 100, 2));
  expect((await post('asker.csv', logOf('asker.csv', 53, 60, 3)))[0]).toBe(200); // all on 01/11 or 11/01
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a reading that is not doubted any more is stored so, though its value is the same', async () => {
  const doubted = () =>
    server.db
      .prepare("SELECT day FROM day_doubts JOIN channel ON number = channel WHERE file = 'in.csv'")
      .all();
  const before = doubted();
  const rows = [SPIKE, ROWS].map((i) => `${iso(i)},${i === SPIKE ? '45.00' : '18'}`);
  expect((await post('in.csv', ['Time,Temperature (°C)', ...rows].join('\n')))[0]).toBe(200);
  expect(doubted()).toHaveLength(before.length - 1);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a column that only the posted log had is gone when that is taken back', async () => {
  const readings = [[instant(0), 40]];
  const sent = asJson('POST', { file: 'in.csv', columns: ['Humidity (%)'], readings });
  expect((await server.ask(`/api/houses/${id}/readings`, sent)).status).toBe(200);
  expect((await undo()).status).toBe(200);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('a logger that shares a file with the one that is touched keeps its readings', async () => {
  const [, ...others] = house.loggers;
  await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
  id = await server.bring({
    ...folder,
    'house.json': JSON.stringify({
      ...house,
      loggers: [
        { file: 'moist.csv', place: 'inside', room: 'First' },
        { file: 'moist.csv', continuedIn: ['in.csv'], place: 'inside', room: 'Second' },
        ...others,
      ],
    }),
    'moist.csv': folder['in.csv'].replace('Temperature (°C)', 'Humidity (%)'),
  });
  expect((await post('in.csv', logOf('in.csv', ROWS, ROWS + 3, 0)))[0]).toBe(200);
  expect(stored(server)).toEqual(await broughtAnew());
});

test('whatever is posted, brought and taken back: what is stored is what the folder gives when it is brought anew', async () => {
  const rows = fc.record({
    file: fc.constantFrom(...names),
    from: fc.integer({ min: 0, max: ROWS + 60 }),
    length: fc.integer({ min: 1, max: 40 }),
    seed: fc.integer({ min: 0, max: FAHRENHEIT }),
  });
  const step = fc.oneof(
    { weight: 4, arbitrary: rows.map((it) => ({ kind: 'posted' as const, ...it })) },
    { weight: 2, arbitrary: rows.map((it) => ({ kind: 'brought' as const, ...it })) },
    { weight: 1, arbitrary: rows.map((it) => ({ kind: 'another column' as const, ...it })) },
    { weight: 1, arbitrary: fc.constant({ kind: 'another room' as const }) },
    { weight: 2, arbitrary: fc.constant({ kind: 'undone' as const }) },
    { weight: 1, arbitrary: fc.constant({ kind: 'next day' as const }) },
  );
  const seen = { whole: 0, part: 0 };
  const { writer } = server.services;
  const look = ({ channels }: HouseToStore) => {
    if (channels !== null) seen[channels.some(({ path }) => path === null) ? 'part' : 'whole']++;
  };
  const { addVersion, undoVersion } = writer;
  Object.assign(writer, {
    addVersion: (...args: Parameters<typeof addVersion>) => {
      look(args[2]);
      return addVersion(...args);
    },
    undoVersion: (...args: Parameters<typeof undoVersion>) => {
      look(args[2]);
      return undoVersion(...args);
    },
  });
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 7 }), async (steps) => {
      await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
      id = await server.bring(folder);
      let day = 0;
      for (const it of steps)
        switch (it.kind) {
          case 'posted':
            await post(it.file, logOf(it.file, it.from, it.from + it.length, it.seed));
            break;
          case 'brought':
            await bringOnto({ [it.file]: logOf(it.file, it.from, it.from + it.length, it.seed) });
            break;
          case 'another column': {
            const columns = ['Humidity (%)'];
            const readings = Array.from({ length: it.length }, (_, k) => [instant(it.from + k), 40 + k]);
            await server.ask(
              `/api/houses/${id}/readings`,
              asJson('POST', { file: it.file, columns, readings }),
            );
            break;
          }
          case 'another room': {
            const json = new TextDecoder().decode(server.services.reading.json(id) ?? new Uint8Array());
            await bringOnto({ 'house.json': json.replace('"Hall"', '"Kitchen"') });
            break;
          }
          case 'undone':
            await undo();
            break;
          case 'next day':
            vi.setSystemTime(Date.UTC(2027, 0, 20 + ++day, 12));
        }
      expect(stored(server)).toEqual(await broughtAnew());
    }),
    { numRuns: Number(process.env.RUNS ?? 8) },
  );
  expect(seen.part).toBeGreaterThan(0);
  expect(seen.whole).toBeGreaterThan(0);
});
