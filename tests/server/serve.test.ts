/** A real process on a real port, as it runs in development: threads, database, restart. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type {
  BringingPreview,
  HouseDetail,
  HouseSummary,
  HousesAnswer,
  Progress,
} from '../../server/api/shapes.ts';
import { serveCommand } from '../../server/serveCommand.ts';
import { openForWriting } from '../../server/store/database.ts';
import { houseFolder, insideFrom } from './inventedHouse.ts';
import { filePath, raw } from './serverAtHand.ts';

/** Whole processes on a busy machine take their time [ms]. */
vi.setConfig({ testTimeout: 180_000 });

const root = new URL('../..', import.meta.url).pathname;
let folder: string;
let started: ChildProcess | null = null;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillwarm-serve-'));
});
afterEach(async () => {
  started?.kill('SIGKILL');
  started = null;
  await rm(folder, { recursive: true });
});

async function start(...args: string[]): Promise<{ url: string; stop(): Promise<number> }> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'server/cli.ts', 'serve', '--port', '0', '--data', folder, ...args],
    { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  started = child;
  let said = '';
  for await (const chunk of child.stdout) {
    said += chunk;
    if (said.includes('\n')) break;
  }
  expect(said).toMatch(/^Stillwarm is at http:\/\/127\.0\.0\.1:\d+\/\n$/);
  return {
    url: /http:\S+\d/.exec(said)?.[0] ?? '',
    stop: async () => {
      child.kill('SIGTERM');
      const [code] = await once(child, 'exit');
      return code;
    },
  };
}

const housesAt = async (url: string) =>
  ((await (await fetch(`${url}/api/houses`)).json()) as { houses: HouseSummary[] }).houses;

/** Asks until the demonstration house is there, which the start does not wait for. */
async function demonstrationAt(url: string): Promise<HouseSummary> {
  for (;;) {
    const answer = (await (await fetch(`${url}/api/houses`)).json()) as HousesAnswer;
    const found = answer.houses.find(({ invented }) => invented);
    if (found !== undefined) return found;
    expect(answer.demonstrationComing).toBe(true);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Follows the progress until nothing goes on. */
async function settled(url: string, id: string): Promise<Progress['state']> {
  const response = await fetch(`${url}/api/houses/${id}/progress`);
  if (response.body === null) throw new Error('no progress');
  let text = '';
  for await (const chunk of response.body.pipeThrough(new TextDecoderStream())) {
    text += chunk;
    const last = text
      .split('\n\n')
      .at(-2)
      ?.replace(/^data: /, '');
    if (last === undefined) continue;
    const { state } = JSON.parse(last) as Progress;
    if (state.kind !== 'assessing') return state;
  }
  throw new Error('the progress ended');
}

test('the first start assesses the demonstration house; a restart finds it assessed, and what was brought', async () => {
  const first = await start();
  const demonstration = await demonstrationAt(first.url);
  expect(await settled(first.url, demonstration.id)).toEqual({ kind: 'assessed' });

  const { id: bringing } = (await (await fetch(`${first.url}/api/bringings`, { method: 'POST' })).json()) as {
    id: string;
  };
  for (const [name, content] of Object.entries(houseFolder))
    await fetch(`${first.url}${filePath(bringing, name)}`, raw(content));
  const kept = await fetch(`${first.url}/api/bringings/${bringing}/keep`, { method: 'POST' });
  const { id } = (await kept.json()) as { id: string };
  expect(await settled(first.url, id)).toEqual({ kind: 'assessed' });
  const before = (await (await fetch(`${first.url}/api/houses/${id}`)).json()) as HouseDetail;
  expect(await first.stop()).toBe(0);
  await expect(stat(join(folder, 'stillwarm.sqlite-wal'))).rejects.toThrow('ENOENT');

  // Marked by hand, so that an assessment made anew would show.
  const db = new Sqlite(join(folder, 'stillwarm.sqlite'));
  db.prepare("UPDATE outcome SET answer = json_set(answer, '$.stage', 'marked')").run();
  db.close();
  const second = await start();
  const houses = await housesAt(second.url);
  expect(houses.map(({ state, answer }) => [state.kind, answer?.stage])).toEqual([
    ['assessed', 'marked'],
    ['assessed', 'marked'],
  ]);
  const after = (await (await fetch(`${second.url}/api/houses/${id}`)).json()) as HouseDetail;
  expect(after.assessment).toEqual(before.assessment);
  expect(await second.stop()).toBe(0);
});

test('stopped at once, while the demonstration house is being made ready, it ends in order', async () => {
  const { stop } = await start();
  expect(await stop()).toBe(0);
  const db = new Sqlite(join(folder, 'stillwarm.sqlite'));
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  db.close();
});

test('a connection that is cut in the middle of an upload leaves nothing, and the next upload is taken', async () => {
  const { url, stop } = await start();
  const post = async (path: string) =>
    (await (await fetch(`${url}/api/${path}`, { method: 'POST' })).json()) as { id: string };
  const { id } = await post('bringings');
  const staged = () => readdir(join(folder, 'bringing', id));
  await fetch(`${url}${filePath(id, 'house.json')}`, raw(houseFolder['house.json']));
  const whole = await staged();
  expect(whole).toHaveLength(1);

  const { hostname, port, host } = new URL(url);
  const socket = connect(Number(port), hostname);
  await once(socket, 'connect');
  const bytes = Buffer.from(houseFolder['in.csv'].repeat(200));
  socket.write(
    `PUT ${filePath(id, 'in.csv')} HTTP/1.1\r\nHost: ${host}\r\nContent-Type: application/octet-stream\r\n` +
      `Content-Length: ${bytes.length}\r\n\r\n`,
  );
  socket.write(bytes.subarray(0, bytes.length / 2));
  await eventually(async () => (await staged()).length === 2);
  socket.destroy();
  await eventually(async () => (await staged()).length === 1);
  expect(await staged()).toEqual(whole);

  const preview = async () => (await (await fetch(`${url}/api/bringings/${id}`)).json()) as BringingPreview;
  expect((await preview()).missing).toEqual(['in.csv', 'logs/out.csv']);
  for (const [name, content] of Object.entries(houseFolder))
    expect((await fetch(`${url}${filePath(id, name)}`, raw(content))).status).toBe(200);
  expect(await preview()).toMatchObject({ missing: [], ready: true });
  expect((await post(`bringings/${id}/keep`)).id).toMatch(/^[\w-]{16}$/);
  expect(await stop()).toBe(0);
});

test('an assessment in its thread is stopped in the middle, and the house can be assessed again', async () => {
  const { url, stop } = await start();
  const { id } = await demonstrationAt(url);
  const path = `${url}/api/houses/${id}/assessment`;
  const stopped = (await (await fetch(path, { method: 'DELETE' })).json()) as Progress;
  expect(stopped.state).toEqual({ kind: 'cancelled' });
  expect(await settled(url, id)).toEqual({ kind: 'cancelled' });
  expect((await fetch(path, { method: 'POST' })).status).toBe(202);
  expect(await settled(url, id)).toEqual({ kind: 'assessed' });
  expect(await stop()).toBe(0);
});

test('no file above the size that it was started with is taken, and one below it is', async () => {
  const { url, stop } = await start('--largest-mb', '1');
  const { id } = (await (await fetch(`${url}/api/bringings`, { method: 'POST' })).json()) as { id: string };
  const sent = async (bytes: number) =>
    await fetch(`${url}${filePath(id, 'a.csv')}`, raw(new Uint8Array(bytes)));
  const large = await sent(1024 * 1024 + 1);
  expect([large.status, await large.json()]).toMatchObject([413, { problems: [{ code: 'too-large' }] }]);
  expect((await sent(1024 * 1024)).status).toBe(200);
  expect(await stop()).toBe(0);
});

test('what is added and undone goes through the threads as well', async () => {
  const { url, stop } = await start();
  const post = async <T>(path: string, body?: object) => {
    const json = { headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) };
    return (await (await fetch(`${url}/api/${path}`, { method: 'POST', ...(body && json) })).json()) as T;
  };
  const bring = async (files: Readonly<Record<string, string>>, body?: object) => {
    const { id } = await post<{ id: string }>('bringings', body);
    for (const [name, content] of Object.entries(files))
      await fetch(`${url}${filePath(id, name)}`, raw(content));
    return (await post<{ id: string }>(`bringings/${id}/keep`)).id;
  };
  const filesOf = async (id: string) =>
    ((await (await fetch(`${url}/api/houses/${id}`)).json()) as HouseDetail).files.map(({ file }) => file);
  const id = await bring(houseFolder);
  expect(await bring({ 'in.csv': insideFrom(0, 600) }, { onto: id })).toBe(id);
  expect(await settled(url, id)).toEqual({ kind: 'assessed' });
  expect(await filesOf(id)).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
  expect((await post<HouseSummary>(`houses/${id}/undo`)).id).toBe(id);
  expect(await settled(url, id)).toEqual({ kind: 'assessed' });
  expect(await filesOf(id)).toEqual(['in.csv', 'logs/out.csv']);
  expect(await readdir(join(folder, 'bringing'))).toEqual([]);
  expect(await stop()).toBe(0);
});

/** Asks again until it holds; the test's own time limit is the only one. */
async function eventually(holds: () => Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setTimeout(resolve, 10));
}

describe('the command refuses, with what to do', () => {
  async function refusal(...args: string[]) {
    let err = '';
    const out = { write: () => {} };
    const code = await serveCommand(
      args,
      {},
      out,
      {
        write: (text) => {
          err += text;
        },
      },
      Promise.resolve(),
    );
    return { code, err };
  }

  test('to let other machines in', async () => {
    const { code, err } = await refusal('--host', '0.0.0.0', '--data', folder);
    expect(code).toBe(2);
    expect(err).toMatch(/needs a passphrase.*stillwarm passphrase/);
  });

  test('a port that is none, and an option that is misspelt', async () => {
    expect((await refusal('--port', '80a')).err).toMatch(/“80a” is not a port/);
    expect((await refusal('--port', '65536')).code).toBe(2);
    expect((await refusal('--prt', '1')).code).toBe(2);
  });

  test.each(['0', '2001', '1.5', 'much'])('a largest file of %s megabytes', async (size) => {
    const { code, err } = await refusal('--largest-mb', size, '--data', folder);
    expect([code, err]).toEqual([2, expect.stringMatching(new RegExp(`“${size}” is no size.*1 to 2000`))]);
  });

  test('a database of a newer version, and leaves it alone', async () => {
    const path = join(folder, 'stillwarm.sqlite');
    const db = new Sqlite(path);
    db.pragma('user_version = 999');
    db.close();
    const before = await readFile(path);
    const { code, err } = await refusal('--port', '0', '--data', folder);
    expect([code, err]).toEqual([2, expect.stringMatching(/newer version/)]);
    expect(await readFile(path)).toEqual(before);
  });

  test('a damaged database, and leaves it alone', async () => {
    const path = join(folder, 'stillwarm.sqlite');
    openForWriting(path).close();
    const damaged = (await readFile(path)).fill(0x5a, 100, 4096);
    await writeFile(path, damaged);
    const { code, err } = await refusal('--port', '0', '--data', folder);
    expect([code, err]).toEqual([2, expect.stringMatching(/database is damaged.*stillwarm restore FILE/)]);
    expect((await readFile(path)).equals(damaged)).toBe(true);
  });

  test('a data folder that is a file', async () => {
    await writeFile(join(folder, 'file'), '');
    const { code, err } = await refusal('--port', '0', '--data', join(folder, 'file'));
    expect([code, err]).toEqual([2, expect.stringMatching(/data folder .* cannot be used/)]);
  });

  test('a port that is taken', async () => {
    const { createServer } = await import('node:net');
    const taken = createServer().listen(0, '127.0.0.1');
    await once(taken, 'listening');
    const address = taken.address();
    const port = typeof address === 'object' ? String(address?.port) : '';
    const { code, err } = await refusal('--port', port, '--data', folder);
    expect([code, err]).toEqual([2, expect.stringMatching(/is taken/)]);
    taken.close();
  });
});
