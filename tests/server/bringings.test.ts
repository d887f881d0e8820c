import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { BringingPreview, BringingProgress, Refusal, TakenFile } from '../../server/api/shapes.ts';
import { house, houseFolder, inside } from './inventedHouse.ts';
import {
  calculateHere,
  filePath,
  heldCalculation,
  raw,
  type ServerAtHand,
  serverAtHand,
  until,
} from './serverAtHand.ts';

let server: ServerAtHand;
let id: string;
const start = async () => (await server.json<{ id: string }>('/api/bringings', { method: 'POST' })).id;
const put = (name: string, body: string | Uint8Array) => server.ask(filePath(id, name), raw(body));
const keep = (of = id) => server.ask(`/api/bringings/${of}/keep`, { method: 'POST' });
const preview = () => server.json<BringingPreview>(`/api/bringings/${id}`);
const codes = async (response: Response) =>
  ((await response.json()) as Refusal).problems.map(({ code }) => code);
const staged = () => readdirSync(join(server.folder, 'bringing', id));
const houseCount = () => server.services.reading.houses().length;

beforeEach(async () => {
  server = serverAtHand({ largestFile: 100_000 });
  id = await start();
});
afterEach(() => server.end());

describe('what was understood is shown before anything is stored', () => {
  test('nothing has come: house.json is asked for', async () => {
    const answer = await preview();
    expect(answer).toMatchObject({ id, onto: null, house: null, files: [], ready: false });
    expect(answer.problems.map(({ code }) => code)).toEqual(['house-json-missing']);
  });

  test('an upload is answered with what has come, and no log is read for it', async () => {
    const tasks: string[] = [];
    await server.end();
    server = serverAtHand({
      calculate: (task, onStep) => {
        tasks.push(task.kind);
        return calculateHere(task, onStep);
      },
    });
    id = await start();
    for (const [name, content] of Object.entries(houseFolder)) {
      const bytes = new TextEncoder().encode(content).length;
      expect((await (await put(name, content)).json()) as TakenFile).toEqual({ name, bytes });
    }
    expect(tasks).toEqual([]);
    await preview();
    await preview();
    await keep();
    expect(tasks.filter((kind) => kind === 'prepare')).toHaveLength(1);
  });

  test('as far as it has come, until it is ready', async () => {
    const answers: BringingPreview[] = [];
    for (const [name, content] of Object.entries(houseFolder)) {
      await put(name, content);
      answers.push(await preview());
    }
    expect(answers.map(({ missing }) => missing)).toEqual([['in.csv', 'logs/out.csv'], ['logs/out.csv'], []]);
    expect(answers.map(({ ready }) => ready)).toEqual([false, false, true]);
    expect(answers[2].files.map(({ imported }) => [imported.file, imported.rows])).toEqual([
      ['in.csv', 432],
      ['logs/out.csv', 432],
    ]);
    expect(answers[2].problems).toEqual([]);
    expect(houseCount()).toBe(0);
  });

  test('a file that house.json does not name is told and not stored', async () => {
    for (const [name, content] of Object.entries({ ...houseFolder, 'holiday.txt': 'x' }))
      await put(name, content);
    expect((await preview()).files.map(({ imported, named }) => [imported.file, named])).toEqual([
      ['in.csv', true],
      ['logs/out.csv', true],
      ['holiday.txt', false],
    ]);
    const kept = ((await (await keep()).json()) as { id: string }).id;
    expect(server.services.reading.files(kept).map(({ file }) => file)).toEqual(['in.csv', 'logs/out.csv']);
  });

  test('a mistake in house.json is told with its line', async () => {
    await put('house.json', JSON.stringify({ ...house, florAreaM2: 1 }, null, 1));
    const answer = await preview();
    expect(answer.problems[0]).toMatchObject({ code: 'key-unknown', where: { file: 'house.json' } });
    expect(answer.problems[0].where?.line).toBeGreaterThan(1);
  });

  test('a file sent again takes the place of the first', async () => {
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
    await put('in.csv', 'not a log');
    expect((await preview()).ready).toBe(false);
    await put('in.csv', inside);
    expect((await preview()).ready).toBe(true);
    // house.json, two logs, and the readings of the last reading alone.
    expect(staged()).toHaveLength(4);
  });

  test('no inside temperature in any file is told', async () => {
    for (const [name, content] of Object.entries({ ...houseFolder, 'in.csv': 'nothing' }))
      await put(name, content);
    expect((await preview()).problems.map(({ code }) => code)).toEqual(['no-inside-temperature']);
  });
});

describe('a reading that goes on', () => {
  let held: ReturnType<typeof heldCalculation>['held'];
  beforeEach(async () => {
    await server.end();
    const calculation = heldCalculation('prepare');
    held = calculation.held;
    server = serverAtHand({ calculate: calculation.calculate });
    id = await start();
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
  });

  test('is not begun anew when the program stops', async () => {
    const answer = server.ask(`/api/bringings/${id}`);
    await until(() => held.length > 0);
    await server.services.close();
    expect(await codes(await answer)).toEqual(['stopping']);
    expect(held).toHaveLength(1);
  });

  test('is shared by two who ask at the same time', async () => {
    const both = Promise.all([preview(), preview()]);
    await until(() => held.length > 0);
    held[0].end();
    const [one, other] = await both;
    expect(one.ready).toBe(true);
    expect(other).toEqual(one);
    expect(held).toHaveLength(1);
  });

  test('is begun anew when another file comes, and whoever waits gets the newer one', async () => {
    const answer = preview();
    await until(() => held.length > 0);
    await put('holiday.txt', 'x');
    await until(() => held.length > 1);
    held[1].end();
    expect((await answer).files.map(({ imported }) => imported.file)).toContain('holiday.txt');
  });

  test('tells file by file how far it is', async () => {
    const response = await server.ask(`/api/bringings/${id}/progress`);
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
    const next = async (): Promise<BringingProgress> =>
      JSON.parse((await reader?.read())?.value?.slice(6) ?? '');
    expect(await next()).toEqual({ reading: null });
    const answer = preview();
    await until(() => held.length > 0);
    expect((await next()).reading?.done).toBe(0);
    held[0].step({ kind: 'read', file: 'logs/out.csv', done: 1, of: 2 });
    expect(await next()).toEqual({ reading: { done: 0.5, what: 'Reading logs/out.csv, file 2 of 2.' } });
    held[0].end();
    await answer;
    expect(await next()).toEqual({ reading: null });
    await server.ask(`/api/bringings/${id}`, { method: 'DELETE' });
    expect((await reader?.read())?.done).toBe(true);
  });

  test('ends with 404 for those who wait when the folder is dropped', async () => {
    const waiting = server.ask(`/api/bringings/${id}`);
    await until(() => held.length > 0);
    await server.ask(`/api/bringings/${id}`, { method: 'DELETE' });
    expect((await waiting).status).toBe(404);
    expect((await server.ask(`/api/bringings/${id}/progress`)).status).toBe(404);
  });

  test('that breaks down is not remembered: asked again, it is begun again', async () => {
    const waiting = server.ask(`/api/bringings/${id}`);
    await until(() => held.length > 0);
    held[0].breakDown();
    expect((await waiting).status).toBe(500);
    const again = preview();
    await until(() => held.length > 1);
    held[1].end();
    expect((await again).ready).toBe(true);
  });
});

describe('keeping', () => {
  test('stores the house; the folder is gone from where it waited', async () => {
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
    const response = await keep();
    expect(response.status).toBe(201);
    expect(((await response.json()) as { id: string }).id).toMatch(/^[\w-]{16}$/);
    expect(existsSync(join(server.folder, 'bringing', id))).toBe(false);
    expect((await server.ask(`/api/bringings/${id}`)).status).toBe(404);
  });

  test('a house of the same name makes a second house', async () => {
    const ids = [await server.bring(houseFolder), await server.bring(houseFolder)];
    expect(new Set(ids).size).toBe(2);
    expect(houseCount()).toBe(2);
  });

  test('is refused while it is not ready, and says why', async () => {
    await put('house.json', houseFolder['house.json']);
    const response = await keep();
    expect(response.status).toBe(409);
    expect(((await response.json()) as Refusal).problems[0].text).toMatch(/in\.csv, logs\/out\.csv/);
  });

  test('two of one name at once: one is kept, the other refused and still there', async () => {
    const other = await start();
    for (const [name, content] of Object.entries(houseFolder)) {
      await put(name, content);
      await server.ask(filePath(other, name), raw(content));
    }
    const answers = await Promise.all([keep(id), keep(other)]);
    expect(answers.map(({ status }) => status)).toEqual([201, 409]);
    expect(await codes(answers[1])).toEqual(['being-kept']);
    expect(houseCount()).toBe(1);
    expect((await keep(other)).status).toBe(201);
  });

  test('one asked for twice at once is kept once', async () => {
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
    const answers = await Promise.all([keep(), keep()]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
    expect(houseCount()).toBe(1);
  });

  test('goes on when the folder is dropped meanwhile: the drop is refused', async () => {
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
    const { writer } = server.services;
    const { keepHouse } = writer;
    const drop = () => server.ask(`/api/bringings/${id}`, { method: 'DELETE' });
    const dropped: number[] = [];
    vi.spyOn(writer, 'keepHouse').mockImplementationOnce(async (...args) => {
      dropped.push((await drop()).status);
      await keepHouse(...args);
    });
    const kept = await keep();
    expect([kept.status, dropped]).toEqual([201, [409]]);
    expect(houseCount()).toBe(1);
  });

  test('on a full disk nothing is half-written, and it can be kept once there is room', async () => {
    for (const [name, content] of Object.entries(houseFolder)) await put(name, content);
    const pages = Number(server.db.pragma('page_count', { simple: true }));
    server.db.pragma(`max_page_count = ${pages + 4}`);
    const response = await keep();
    expect([response.status, await codes(response)]).toEqual([507, ['storage-full']]);
    for (const table of ['house', 'version', 'file', 'original', 'channel', 'day', 'layout'])
      expect(server.db.prepare(`SELECT count(*) FROM ${table}`).pluck().get()).toBe(0);
    expect(server.db.pragma('integrity_check', { simple: true })).toBe('ok');
    server.db.pragma('max_page_count = 1000000');
    expect((await keep()).status).toBe(201);
  });

  test('dropping removes everything', async () => {
    await put('in.csv', inside);
    expect((await server.ask(`/api/bringings/${id}`, { method: 'DELETE' })).status).toBe(204);
    expect(existsSync(join(server.folder, 'bringing', id))).toBe(false);
  });

  test('what an earlier run left behind is removed at the start', async () => {
    await put('in.csv', inside);
    await server.services.bringings.clear();
    expect(existsSync(join(server.folder, 'bringing'))).toBe(false);
  });
});

describe('an upload is refused', () => {
  test.each([
    ['..%2F..%2Fetc%2Fpasswd'],
    ['a/..%2f..%2fb'],
    ['%2Fetc%2Fpasswd'],
    ['C%3A%2Fwindows'],
    ['a%5Cb.csv'],
    ['a%00b.csv'],
    ['logs/'],
    ['logs//in.csv'],
    ['logs%2F.%2Fin.csv'],
    ['x'.repeat(201)],
  ])('with 400 when its path leaves the folder, is that of a folder, or is no path: %s', async (path) => {
    const response = await server.ask(`/api/bringings/${id}/files/${path}`, raw('x'));
    expect([response.status, await codes(response)]).toEqual([400, ['path-refused']]);
    expect(staged()).toEqual([]);
  });

  test('with 404 when dots lead out of the address itself', async () => {
    expect((await server.ask(`/api/bringings/${id}/files/%2e%2e/%2e%2e/x`, raw('x'))).status).toBe(404);
  });

  test('with 415 when it is not sent as bytes', async () => {
    const form = { ...raw('x'), headers: { 'Content-Type': 'text/csv' } };
    expect((await server.ask(filePath(id, 'in.csv'), form)).status).toBe(415);
  });

  test('with 413 when it is too large, and nothing of it stays', async () => {
    const response = await put('in.csv', new Uint8Array(100_001));
    expect([response.status, await codes(response)]).toEqual([413, ['too-large']]);
    expect(staged()).toEqual([]);
    expect((await put('in.csv', new Uint8Array(100_000))).status).toBe(200);
  });

  test('with 404 for a bringing that is not there', async () => {
    expect((await server.ask(filePath('nothing', 'in.csv'), raw('x'))).status).toBe(404);
    expect((await keep('nothing')).status).toBe(404);
    expect((await server.ask('/api/bringings/nothing', { method: 'DELETE' })).status).toBe(404);
  });

  test('when two of one name come at once, both are taken whole and one of them counts', async () => {
    const answers = await Promise.all([put('in.csv', inside), put('in.csv', `${inside}\n`)]);
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    expect(staged()).toHaveLength(1);
    await put('house.json', houseFolder['house.json']);
    await put('logs/out.csv', houseFolder['logs/out.csv']);
    expect((await preview()).files[0].imported.rows).toBe(432);
  });

  test('when it stops half-way, and nothing of it stays', async () => {
    let sent = 0;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        if (sent++ < 3) controller.enqueue(new Uint8Array(1000));
        else controller.error(new Error('the connection was closed'));
      },
    });
    const init = { ...raw(''), body, duplex: 'half' } as RequestInit;
    const response = await server.ask(filePath(id, 'in.csv'), init);
    expect([response.status, await codes(response)]).toEqual([400, ['upload-stopped']]);
    expect(staged()).toEqual([]);
    expect((await preview()).files).toEqual([]);
  });
});

test('the exported folder is what was brought, byte for byte', async () => {
  const kept = await server.bring(houseFolder);
  const response = await server.ask(`/api/houses/${kept}/folder.zip`);
  expect(response.headers.get('content-type')).toBe('application/zip');
  expect(response.headers.get('content-disposition')).toContain("filename*=UTF-8''Test%20house.zip");
  const files = unzipSync(new Uint8Array(await response.arrayBuffer()));
  expect(Object.keys(files)).toEqual(Object.keys(houseFolder));
  for (const [name, content] of Object.entries(houseFolder))
    expect(files[name]).toEqual(new TextEncoder().encode(content));
});
