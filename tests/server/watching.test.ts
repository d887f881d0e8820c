/** A watched folder: what appears in it and stands still is taken, once; the rest is told and left where it is. */
import {
  appendFileSync,
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, parse } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseDetail, HousesAnswer, WatchedAnswer } from '../../server/api/shapes.ts';
import { filesIn } from '../../server/jobs/watch/filesIn.ts';
import { openedFile } from '../../server/jobs/watch/openedFile.ts';
import { serveCommand } from '../../server/serveCommand.ts';
import { house, houseFolder, insideFrom } from './inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let watched: string;
let now = 0;
beforeEach(() => {
  watched = mkdtempSync(join(tmpdir(), 'stillwarm-watched-'));
  server = serverAtHand({ watchedFolder: watched, calculate: heldCalculation().calculate });
});
afterEach(async () => {
  await server.end();
  rmSync(watched, { recursive: true });
});

/** Looks at the folder after so many seconds. */
const look = (after: number) => {
  now += after * 1000;
  return server.services.watching?.look(now);
};
/** Two looks, far enough apart for what stands still. */
const settle = async () => {
  await look(2);
  await look(6);
};
function put(files: Readonly<Record<string, string>>) {
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(watched, path)), { recursive: true });
    writeFileSync(join(watched, path), content);
  }
}
const inFolder = (folder: string, files: Readonly<Record<string, string>>) =>
  put(Object.fromEntries(Object.entries(files).map(([name, content]) => [`${folder}/${name}`, content])));
const houses = async () => (await server.json<HousesAnswer>('/api/houses')).houses;
const filesOf = async (id: string) =>
  (await server.json<HouseDetail>(`/api/houses/${id}`)).files.map(({ file }) => file);
const problems = async () => (await server.json<WatchedAnswer>('/api/watched')).problems;
const codes = async () => (await problems()).map(({ path, problems }) => [path, problems[0].code]);

describe('a log in the folder of a house', () => {
  let id: string;
  beforeEach(async () => {
    id = await server.bring(houseFolder);
  });

  test('is a later export of its logger once it stands still, and is taken once', async () => {
    put({ 'test house/in.csv': insideFrom(400, 500) });
    await look(2);
    await look(2);
    expect(await filesOf(id)).toHaveLength(2);
    await look(6);
    await settle();
    expect(await filesOf(id)).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
    expect(await server.json('/api/watched')).toEqual({ folder: watched, problems: [] });
    expect(readdirSync(join(watched, 'test house'))).toEqual(['in.csv']);
  });

  test('may be named by the id of the house, and lie in a folder as its logger does', async () => {
    put({ [`${id}/logs/out.csv`]: houseFolder['logs/out.csv'].replaceAll('2027-01-', '2027-02-') });
    await settle();
    expect(await filesOf(id)).toContain('logs/out (2).csv');
  });

  test('that goes on growing is not taken before it stands still; later it is taken again', async () => {
    put({ 'Test house/in.csv': insideFrom(0, 440) });
    for (let i = 440; i < 443; i++) {
      await look(4);
      appendFileSync(join(watched, 'Test house/in.csv'), `\n${insideFrom(i, i + 1).split('\n')[1]}`);
    }
    expect(await filesOf(id)).toHaveLength(2);
    await settle();
    expect(await filesOf(id)).toHaveLength(3);
    writeFileSync(join(watched, 'new'), insideFrom(0, 450));
    renameSync(join(watched, 'new'), join(watched, 'Test house/in.csv'));
    await settle();
    expect(await filesOf(id)).toHaveLength(4);
  });

  test('that is of no logger is told, and not tried again until it changes', async () => {
    const attic = 'Time,Temperature (°C)\n2029-01-01 10:00,3\n2029-01-01 11:00,4\n';
    put({ 'Test house/attic.csv': attic });
    for (let i = 0; i < 4; i++) await look(6);
    expect(await problems()).toMatchObject([
      { path: 'Test house/attic.csv', house: id, problems: [{ code: 'logger-not-known' }] },
    ]);
    expect(server.told).toEqual([expect.stringMatching(/Test house\/attic\.csv: .*logger.*in\.csv/)]);
    put({ 'Test house/attic.csv': `${attic}2029-01-01 12:00,4\n` });
    await settle();
    expect(server.told).toHaveLength(2);
    rmSync(join(watched, 'Test house/attic.csv'));
    await look(2);
    expect(await problems()).toEqual([]);
  });

  test('is not brought back after it was undone, nor after a restart', async () => {
    put({ 'Test house/in.csv': insideFrom(400, 500) });
    await settle();
    await server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
    await settle();
    expect(await filesOf(id)).toHaveLength(2);
    const again = serverAtHand({ watchedFolder: watched }, server.folder);
    await again.services.watching?.look(0);
    await again.services.watching?.look(60_000);
    expect((await again.json<HouseDetail>(`/api/houses/${id}`)).files).toHaveLength(2);
    await again.end();
  });

  test('that the machine has no room for is told, and tried again a minute later', async () => {
    put({ 'Test house/in.csv': insideFrom(400, 500) });
    const pages = server.db.pragma('page_count', { simple: true });
    server.db.pragma(`max_page_count = ${pages}`);
    await settle();
    await settle();
    expect([server.told.length, await codes()]).toEqual([1, [['Test house/in.csv', 'storage-full']]]);
    server.db.pragma('max_page_count = 1000000');
    await look(60);
    expect([await filesOf(id), await problems()]).toEqual([['in.csv', 'logs/out.csv', 'in (2).csv'], []]);
  });

  test.skipIf(process.getuid?.() === 0)(
    'that may not be read is told once, and taken once it may',
    async () => {
      put({ 'Test house/in.csv': insideFrom(400, 500) });
      chmodSync(join(watched, 'Test house/in.csv'), 0);
      await settle();
      expect(await codes()).toEqual([['Test house/in.csv', 'file-not-readable']]);
      await look(60);
      expect(server.told).toHaveLength(1);
      chmodSync(join(watched, 'Test house/in.csv'), 0o600);
      await look(60);
      expect([await filesOf(id), await problems()]).toEqual([['in.csv', 'logs/out.csv', 'in (2).csv'], []]);
    },
  );

  test('is not read through links, nor when hidden or half copied', async () => {
    const elsewhere = join(server.folder, 'secret.csv');
    writeFileSync(elsewhere, insideFrom(400, 500));
    mkdirSync(join(watched, 'Test house'));
    symlinkSync(elsewhere, join(watched, 'Test house/in.csv'));
    symlinkSync(server.folder, join(watched, 'Test house/logs'));
    symlinkSync(server.folder, join(watched, id));
    put({ 'Test house/.in.csv': insideFrom(400, 500), 'Test house/in.csv.part': 'Time' });
    await settle();
    expect([await filesOf(id), await problems()]).toEqual([['in.csv', 'logs/out.csv'], []]);
  });

  test('of a name that two houses have is told', async () => {
    await server.bring(houseFolder);
    put({ 'Test house/in.csv': insideFrom(400, 500) });
    await settle();
    expect(await codes()).toEqual([['Test house/in.csv', 'several-houses-of-folder']]);
  });
});

describe('a folder of no house', () => {
  test('is told, and taken once there is a house of its name', async () => {
    put({ 'Test house/in.csv': insideFrom(400, 500) });
    await settle();
    expect(await codes()).toEqual([['Test house/in.csv', 'no-house-of-folder']]);
    const id = await server.bring(houseFolder);
    await settle();
    expect([await filesOf(id), await problems()]).toEqual([['in.csv', 'logs/out.csv', 'in (2).csv'], []]);
  });

  test('with a house.json is a new house, once all its files are there and stand still', async () => {
    inFolder('Test house', { 'house.json': houseFolder['house.json'], 'in.csv': houseFolder['in.csv'] });
    await settle();
    expect([await houses(), await codes()]).toEqual([[], [['Test house/house.json', 'files-to-come']]]);
    put({ 'Test house/logs/out.csv': houseFolder['logs/out.csv'] });
    for (let i = 0; i < 3; i++) await look(6);
    const [{ id, name }, ...more] = await houses();
    expect([name, more, await problems()]).toEqual(['Test house', [], []]);
    expect(Buffer.from(server.services.reading.json(id) ?? []).toString()).toBe(houseFolder['house.json']);
    expect((await server.json<HouseDetail>(`/api/houses/${id}`)).imports).toHaveLength(1);
  });

  test('by another name than its house stays the folder of the house that was begun from it', async () => {
    inFolder('Plot 7', houseFolder);
    await settle();
    const [{ id }] = await houses();
    put({ 'Plot 7/in.csv': insideFrom(0, 500) });
    await settle();
    expect([await filesOf(id), await problems()]).toEqual([['in.csv', 'logs/out.csv', 'in (2).csv'], []]);
  });

  test('that was renamed, or is of a house that is here by its name, begins no second one', async () => {
    inFolder('Plot 7', houseFolder);
    await settle();
    renameSync(join(watched, 'Plot 7'), join(watched, 'Plot 8'));
    await settle();
    expect([(await houses()).length, await codes()]).toEqual([
      1,
      [['Plot 8/house.json', 'house-there-already']],
    ]);
  });

  test('whose house.json changes afterwards is told to bring it, and begins no second house', async () => {
    inFolder('Plot 7', houseFolder);
    await settle();
    const [{ id }] = await houses();
    put({ 'Plot 7/house.json': JSON.stringify({ ...house, floorAreaM2: 123 }) });
    for (let i = 0; i < 3; i++) await settle();
    expect([(await houses()).length, await problems(), server.told.length]).toMatchObject([
      1,
      [{ path: 'Plot 7/house.json', house: id, problems: [{ code: 'house-json-not-read-again' }] }],
      1,
    ]);
    put({ 'Plot 7/house.json': houseFolder['house.json'] });
    await settle();
    expect(await problems()).toEqual([]);
  });

  test('with a mistake in its house.json is told, until it is mended', async () => {
    inFolder('Test house', { ...houseFolder, 'house.json': '{' });
    await settle();
    await settle();
    expect([server.told.length, await codes()]).toEqual([1, [['Test house/house.json', 'json-broken']]]);
    put({ 'Test house/house.json': JSON.stringify(house) });
    await settle();
    expect([(await houses()).length, await problems()]).toEqual([1, []]);
  });

  test('whose house was deleted does not bring it back by itself', async () => {
    inFolder('Test house', houseFolder);
    await settle();
    const [{ id }] = await houses();
    await server.ask(`/api/houses/${id}`, { method: 'DELETE' });
    put({ 'Test house/in.csv': insideFrom(0, 500) });
    await settle();
    expect(await houses()).toEqual([]);
  });
});

test.each([
  ['before it is read', 0],
  ['while it is read', 1],
])('a file that changes %s breaks off, and is left for the next look', async (_, begun) => {
  put({ 'Test house/in.csv': insideFrom(400, 500) });
  const [found] = await filesIn(watched);
  const reader = openedFile(watched, found).getReader();
  for (let i = 0; i < begun; i++) expect((await reader.read()).done).toBe(false);
  utimesSync(join(watched, 'Test house/in.csv'), 1, 1);
  const toItsEnd = async () => {
    while (!(await reader.read()).done);
  };
  await expect(toItsEnd()).rejects.toMatchObject({ problems: [{ code: 'file-changed' }] });
});

describe('a file that is read', () => {
  const path = 'Test house/in.csv';
  /** Of several pieces of a stream, so that it is in the middle of them that something happens. */
  const long = `${insideFrom(0, 500)}\n${'# a remark that says nothing at all\n'.repeat(20_000)}`;
  let id: string;
  beforeEach(async () => {
    id = await server.bring(houseFolder);
    put({ [path]: long, 'Test house/logs/out.csv': houseFolder['logs/out.csv'].replaceAll('-01-', '-02-') });
  });
  /** Does something to the file in the middle of the next reading of it. */
  function inTheMiddle(act: () => void) {
    const { bringings } = server.services;
    const { put: whole } = bringings;
    Object.assign(bringings, {
      put: async (bringing: string, name: string, body: ReadableStream) => {
        if (name !== 'in.csv') return whole(bringing, name, body);
        Object.assign(bringings, { put: whole });
        const reader = body.getReader();
        async function* pieces() {
          yield (await reader.read()).value;
          act();
          for (let piece = await reader.read(); !piece.done; piece = await reader.read()) yield piece.value;
        }
        return whole(bringing, name, ReadableStream.from(pieces()));
      },
    });
  }

  test('and taken away meanwhile is told, the others are taken, and it is when it is back', async () => {
    inTheMiddle(() => rmSync(join(watched, path)));
    await settle();
    expect(server.told).toEqual([
      expect.stringMatching(/Test house\/in\.csv: .*taken away while it was read/),
    ]);
    expect(await filesOf(id)).toEqual(['in.csv', 'logs/out.csv', 'logs/out (2).csv']);
    expect(readdirSync(join(server.folder, 'bringing'))).toEqual([]);
    await settle();
    put({ [path]: long });
    await settle();
    expect([await filesOf(id), await problems()]).toEqual([
      ['in.csv', 'logs/out.csv', 'logs/out (2).csv', 'in (2).csv'],
      [],
    ]);
  });

  test('and written anew meanwhile is told, and read as it then is', async () => {
    inTheMiddle(() => put({ [path]: insideFrom(0, 600) }));
    await settle();
    expect(server.told).toEqual([expect.stringMatching(/Test house\/in\.csv: .*changed/)]);
    await settle();
    expect(await filesOf(id)).toEqual(['in.csv', 'logs/out.csv', 'logs/out (2).csv', 'in (2).csv']);
    expect(Buffer.from(server.services.reading.file(id, 'in (2).csv') ?? []).toString()).toBe(
      insideFrom(0, 600),
    );
  });
});

test.each([
  ['that is not there', () => join(watched, 'nowhere'), /no folder .*nowhere to watch/],
  ['in which the database lies', () => server.folder, /where the database lies/],
])('a folder %s is refused at the start', async (_, folder, reason) => {
  let said = '';
  const err = { write: (text: string) => (said += text) };
  const args = ['--port', '0', '--data', server.folder, '--watch', folder()];
  expect(await serveCommand(args, {}, err, err, Promise.resolve())).toBe(2);
  expect(said).toMatch(reason);
});

test('a file is read where a whole drive is watched', async () => {
  put({ 'house/in.csv': 'Time' });
  const { root } = parse(watched);
  const [file] = await filesIn(watched);
  const path = join(watched, file.path).slice(root.length);
  expect(await new Response(openedFile(root, { ...file, path })).text()).toBe('Time');
});
