/** What a machine does to a program: no room, no right, another program, a clock that jumps, a file or a thread gone. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { sessions } from '../../server/access/sessions.ts';
import { throttle } from '../../server/access/throttle.ts';
import type { MadeLink } from '../../server/api/accessShapes.ts';
import type { HouseDetail, Refusal } from '../../server/api/shapes.ts';
import { writerInThread } from '../../server/jobs/writer.ts';
import { begin } from '../../server/services.ts';
import { houseFolder, insideFrom } from '../server/inventedHouse.ts';
import {
  asJson,
  calculateHere,
  heldCalculation,
  type ServerAtHand,
  serverAtHand,
} from '../server/serverAtHand.ts';
import { contentOf } from './kills/content.ts';

let server: ServerAtHand;
let id: string;
let held: ReturnType<typeof heldCalculation>;
beforeEach(async () => {
  held = heldCalculation();
  server = serverAtHand({ calculate: held.calculate });
  id = await server.bring(houseFolder);
});
afterEach(async () => {
  vi.useRealTimers();
  await server.end();
});

const told = async (response: Response) => {
  const { problems } = (await response.json()) as Refusal;
  return [response.status, ...problems.map(({ code }) => code)];
};
const content = () => contentOf(join(server.folder, 'stillwarm.sqlite'));
const post = (path: string, value: unknown) => server.ask(`/api/houses/${id}/${path}`, asJson('POST', value));
const detail = () => server.json<HouseDetail>(`/api/houses/${id}`);

/** Changes of a house, each by a way of its own. */
const changes: Readonly<Record<string, () => Promise<Response>>> = {
  'a later export': async () => {
    const bringing = await server.begin(id);
    await bringing.put({ 'in.csv': insideFrom(400, 2000) });
    return bringing.keep();
  },
  'readings that are sent': () =>
    server.ask(`/api/houses/${id}/readings?file=in.csv`, {
      method: 'POST',
      headers: { 'Content-Type': 'text/csv' },
      body: insideFrom(400, 2000),
    }),
  'a note': () => post('notes', { at: '2027-01-11T12:00', text: 'x'.repeat(900) }),
  'a link': () => post('links', { scope: 'see', whose: 'x', days: 1 }),
  'putting away': () => server.ask(`/api/houses/${id}/away`, asJson('PUT', { away: true })),
  deleting: () => server.ask(`/api/houses/${id}`, { method: 'DELETE' }),
};
const growing = ['a later export', 'readings that are sent'];

/** Refused for this reason and nothing changed, while reading goes on; done once the reason is gone. */
async function isRefusedAndThenDone(change: string, why: readonly unknown[], mend: () => unknown) {
  const before = content();
  expect(await told(await changes[change]())).toEqual(why);
  expect(content()).toBe(before);
  expect((await detail()).name).toBe('Test house');
  await mend();
  expect((await changes[change]()).ok).toBe(true);
}

describe('a change', () => {
  test.each(growing)('on a full disk is refused and done once there is room: %s', async (change) => {
    server.db.pragma(`max_page_count = ${server.db.pragma('page_count', { simple: true })}`);
    await isRefusedAndThenDone(change, [507, 'storage-full'], () =>
      server.db.pragma('max_page_count = 1000000'),
    );
  });

  test.each(Object.keys(changes))('of a database that may not be written is refused: %s', async (change) => {
    server.db.pragma('query_only = ON');
    await isRefusedAndThenDone(change, [503, 'storage-read-only'], () =>
      server.db.pragma('query_only = OFF'),
    );
  });

  test.each(['a later export', 'putting away'])(
    'while another program holds the database is refused: %s',
    async (change) => {
      const other = await lockedByAnother();
      server.db.pragma('busy_timeout = 20');
      await isRefusedAndThenDone(change, [503, 'storage-busy'], other.release);
    },
  );
});

describe('an assessment', () => {
  const path = () => `/api/houses/${id}/assessment`;
  const state = async () => (await detail()).state;
  const cancel = () => server.ask(path(), { method: 'DELETE' });

  test('whose result cannot be stored says why, and can be asked for again', async () => {
    server.db.pragma('query_only = ON');
    held.held[0].end();
    await vi.waitUntil(async () => (await state()).kind !== 'assessing');
    expect(await state()).toMatchObject({ kind: 'not assessed', problems: [{ code: 'storage-read-only' }] });
    server.db.pragma('query_only = OFF');
    await server.ask(path(), { method: 'POST' });
    held.held[1].end();
    await vi.waitUntil(async () => (await state()).kind === 'assessed');
  });

  test('that cannot be stored as cancelled is over all the same, and can be asked for again', async () => {
    server.db.pragma('query_only = ON');
    expect(await told(await cancel())).toEqual([503, 'storage-read-only']);
    expect((await state()).kind).toBe('not assessed');
    server.db.pragma('query_only = OFF');
    await server.ask(path(), { method: 'POST' });
    expect((await state()).kind).toBe('assessing');
    expect((await cancel()).status).toBe(200);
  });
});

describe('what the machine says in a code', () => {
  test.each([
    ['SQLITE_FULL', 507, 'storage-full'],
    ['ENOSPC', 507, 'storage-full'],
    ['EFBIG', 507, 'storage-too-small'],
    ['SQLITE_READONLY_DBMOVED', 503, 'storage-read-only'],
    ['EROFS', 503, 'storage-read-only'],
    ['SQLITE_BUSY_SNAPSHOT', 503, 'storage-busy'],
    ['SQLITE_IOERR_WRITE', 503, 'storage-failing'],
    ['EIO', 503, 'storage-failing'],
    ['SQLITE_CORRUPT_VTAB', 503, 'storage-damaged'],
    ['SQLITE_CANTOPEN', 503, 'storage-not-reached'],
    ['EMFILE', 503, 'too-many-files-open'],
    ['ERR_WORKER_INIT_FAILED', 503, 'too-many-files-open'],
  ])('%s is told with %i and what to do, without a stack', async (code, status, problem) => {
    const putAway = () => Promise.reject(Object.assign(new Error('at /work/x.ts'), { code }));
    Object.assign(server.services.writer, { putAway });
    const answer = await changes['putting away']();
    expect(await answer.clone().text()).not.toContain('/work/x.ts');
    expect(await told(answer)).toEqual([status, problem]);
    expect(server.told).toEqual([]);
  });
});

/** A process that has begun to write and does not end. */
async function lockedByAnother() {
  const code = `
    const db = require('better-sqlite3')(${JSON.stringify(join(server.folder, 'stillwarm.sqlite'))});
    db.exec('BEGIN IMMEDIATE');
    console.log('locked');
    setInterval(() => {}, 1000);`;
  const child = spawn(process.execPath, ['-e', code], { stdio: ['ignore', 'pipe', 'inherit'] });
  await once(child.stdout, 'data');
  const release = async () => {
    child.kill('SIGKILL');
    await once(child, 'exit');
  };
  return { release };
}

describe('a clock that jumps', () => {
  const YEAR = 365 * 86_400;

  test.each([-YEAR, YEAR])('by %i s leaves imports in the order in which they came', async (by) => {
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + by * 1000 });
    await changes['a later export']();
    expect((await detail()).imports.map(({ files }) => files)).toEqual([
      ['in.csv', 'logs/out.csv'],
      ['in (2).csv'],
    ]);
    await server.ask(`/api/houses/${id}/undo`, { method: 'POST' });
    expect((await detail()).files.map(({ file }) => file)).toEqual(['in.csv', 'logs/out.csv']);
  });

  test('forwards and back takes no link away that has not run out', async () => {
    const { path } = (await (await post('links', { scope: 'see', whose: 'x', days: 7 })).json()) as MadeLink;
    const opened = async () =>
      (await server.ask('/api/shared', { headers: { Cookie: `stillwarm-link=${path.slice(3)}` } })).status;
    const now = Date.now();
    vi.useFakeTimers({ toFake: ['Date'], now: now + YEAR * 1000 });
    expect(await opened()).toBe(401);
    vi.setSystemTime(now);
    expect(await opened()).toBe(200);
  });

  test('backwards has nobody wait longer than the longest wait', () => {
    let now = 2 * YEAR;
    const guesses = throttle(() => now);
    for (let i = 0; i < 5; i++) guesses.guess('192.0.2.1');
    const before = guesses.wait('192.0.2.1');
    now -= YEAR;
    expect(guesses.wait('192.0.2.1')).toBe(before);
  });

  test('backwards ends who has signed in, rather than keep them signed in for a year more', () => {
    let now = 2 * YEAR;
    const signedIn = sessions(() => now);
    const token = signedIn.begin('hash');
    now -= 1; // clocks are put right by a little all the time
    expect(signedIn.holds(token, 'hash')).toBe(true);
    now -= YEAR;
    expect(signedIn.holds(token, 'hash')).toBe(false);
  });
});

describe('a file of a folder that is being brought', () => {
  test('that vanishes before it is read is told, and the folder can be brought again', async () => {
    const bringing = await server.begin();
    await bringing.put(houseFolder);
    rmSync(join(server.folder, 'bringing', bringing.id, '2'));
    const preview = await server.ask(`/api/bringings/${bringing.id}`);
    expect(await told(preview)).toEqual([410, 'files-gone']);
    await bringing.put(houseFolder);
    expect((await bringing.keep()).status).toBe(201);
  });

  test('that vanishes after it was read and before it is kept is told, and nothing is stored', async () => {
    const before = content();
    const bringing = await server.begin(id);
    await bringing.put({ 'in.csv': insideFrom(400, 500) });
    await bringing.preview();
    const folder = join(server.folder, 'bringing', bringing.id);
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
    expect(await told(await bringing.keep())).toEqual([410, 'files-gone']);
    expect(content()).toBe(before);
    await bringing.put({ 'in.csv': insideFrom(400, 500) });
    expect((await bringing.keep()).status).toBe(201);
  });
});

test('a start without the folder of the demonstration house tells that, and serves the houses there are to be', async () => {
  const own = serverAtHand({ demonstrationFolder: '/no/such/folder', calculate: held.calculate });
  await begin(own.services);
  await vi.waitUntil(() => own.told.length > 0);
  expect(own.told).toEqual([expect.stringMatching(/demonstration house was not stored/)]);
  expect((await own.ask('/api/houses')).status).toBe(200);
  await own.end();
});

describe('a thread that breaks down', () => {
  test('over a preview is told, and the next asking has it read', async () => {
    const brittle = heldCalculation('prepare');
    let times = 0;
    const own = serverAtHand({
      calculate: (task, onStep) =>
        task.kind === 'prepare' && times++ === 0
          ? brittle.calculate(task, onStep)
          : calculateHere(task, onStep),
    });
    const bringing = await own.begin();
    await bringing.put(houseFolder);
    const first = own.ask(`/api/bringings/${bringing.id}`);
    await vi.waitUntil(() => brittle.held.length > 0);
    brittle.held[0].breakDown();
    const answer = await first;
    expect(await told(answer.clone())).toEqual([500, 'server-fault']);
    expect(await answer.text()).not.toContain('/work/x.ts');
    expect((await bringing.preview()).ready).toBe(true);
    await own.end();
  });

  test('over a change is told, and the next change is made', async () => {
    const start = () => new Worker(new URL('../server/brittleWriter.mjs', import.meta.url));
    const { writer, close } = writerInThread(start, () => {});
    Object.assign(server.services.writer, { putAway: writer.putAway, keepUntil: writer.keepUntil });
    expect(await told(await changes['putting away']())).toEqual([503, 'writer-broke-down']);
    expect((await detail()).away).toBe(false);
    const kept = await server.ask(`/api/houses/${id}/keep-until`, asJson('PUT', { until: null }));
    expect(kept.status).toBe(200);
    await close();
  });

  test('for want of the database says which want it is', async () => {
    const code = "throw Object.assign(new Error('database is locked'), { code: 'SQLITE_BUSY' });";
    const { writer } = writerInThread(
      () => new Worker(code, { eval: true }),
      () => {},
    );
    await expect(writer.putAway('x', true)).rejects.toMatchObject({ problems: [{ code: 'storage-busy' }] });
  });
});
