/** Clients that come in crowds, dawdle or go away, and starts that cannot be, against a server in a process of its own. */
import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { BringingPreview, HousesAnswer } from '../../server/api/shapes.ts';
import { DATABASE_FILE } from '../../server/store/database.ts';
import { assertSound } from '../../server/store/soundness.ts';
import { houseFolder, houseText, inside, insideFrom } from '../server/inventedHouse.ts';
import { filePath, raw } from '../server/serverAtHand.ts';
import { type Bundled, bundled } from './bundled.ts';
import { type Served, served, withoutDemonstration } from './served.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let built: Bundled;
let server: Served;
beforeAll(async () => {
  built = await bundled();
  server = await served(built.cli);
});
afterAll(async () => {
  await server.end();
  built.remove();
});

const houses = async () => (await server.json<HousesAnswer>('/api/houses')).houses;
const staged = (bringing: string) => readdirSync(join(server.folder, 'bringing', bringing));
async function socketTo(): Promise<Socket> {
  const { port, hostname } = new URL(server.url);
  const socket = connect(Number(port), hostname);
  socket.on('error', () => {}); // being cut is what some of them are for
  await once(socket, 'connect');
  return socket;
}
const headOf = (method: string, path: string, length?: number) =>
  [
    `${method} ${path} HTTP/1.1`,
    `Host: ${new URL(server.url).host}`,
    ...(length === undefined ? [] : ['Content-Type: application/octet-stream', `Content-Length: ${length}`]),
    '\r\n',
  ].join('\r\n');

test('200 uploads at once are all taken', async () => {
  const id = await server.begin({ 'house.json': houseText });
  const names = Array.from({ length: 200 }, (_, i) => `logs/${i}.csv`);
  const log = (i: number) =>
    `Time,Temperature (°C)\n2027-01-10 12:00,${i / 10}\n2027-01-10 12:10,${i / 10}\n`;
  const sent = names.map(
    async (name, i) => (await fetch(`${server.url}${filePath(id, name)}`, raw(log(i)))).status,
  );
  expect(new Set(await Promise.all(sent))).toEqual(new Set([200]));
  const { files } = await server.json<BringingPreview>(`/api/bringings/${id}`);
  expect(files.map(({ imported }) => [imported.file, imported.readings]).toSorted()).toEqual(
    names.map((name) => [name, 2]).toSorted(),
  );
});

test('while a hundred clients dawdle in the middle of their requests others are answered, and nothing of theirs stays', async () => {
  const id = await server.begin(houseFolder);
  const sockets = await Promise.all(Array.from({ length: 100 }, () => socketTo()));
  sockets.forEach((socket, i) => {
    if (i % 2 === 0) socket.write('GET /api/houses HTTP/1.1\r\nHost: loc');
    else socket.write(`${headOf('PUT', filePath(id, `slow ${i}.csv`), 1_000_000)}Time,Temp`);
  });
  await vi.waitUntil(() => staged(id).length === 3 + 50);
  expect((await houses()).length).toBe(0);
  for (const socket of sockets) socket.destroy();
  await vi.waitUntil(() => staged(id).length === 3);
  await server.keep(id);
  expect((await houses()).length).toBe(1);
});

test('while a client reads slowly others are answered, and it gets all in the end', async () => {
  const long = `${inside}\n${'# a remark that says nothing at all\n'.repeat(200_000)}`;
  const id = await server.keep(
    await server.begin({ ...houseFolder, 'house.json': houseText.replace('Test', 'Long'), 'in.csv': long }),
  );
  const path = `/api/houses/${id}/nameless.zip`;
  const whole = Buffer.from(await (await fetch(`${server.url}${path}`)).arrayBuffer());
  const socket = await socketTo();
  socket.write(headOf('GET', path));
  await once(socket, 'readable');
  socket.pause();
  expect((await houses()).length).toBe(2);
  const parts: Buffer[] = [];
  socket.on('data', (chunk) => parts.push(chunk));
  socket.resume();
  await vi.waitUntil(() => Buffer.concat(parts).includes(whole.subarray(-22)));
  expect(Buffer.concat(parts).includes(whole.subarray(0, 30))).toBe(true);
  socket.destroy();
});

test('clients that go away in the middle leave it alive, and what they asked for done wholly or not at all', async () => {
  const [{ id }] = await houses();
  for (const path of ['folder.zip', 'progress', 'readings', 'nameless.zip']) {
    const socket = await socketTo();
    socket.write(headOf('GET', `/api/houses/${id}/${path}`));
    socket.destroy();
  }
  const bringing = await server.begin({ 'in.csv': insideFrom(400, 500) }, id);
  const socket = await socketTo();
  socket.write(headOf('POST', `/api/bringings/${bringing}/keep`, 0));
  await new Promise((resolve) => setTimeout(resolve, 20));
  socket.destroy();
  const files = async () =>
    (await server.json<{ files: readonly unknown[] }>(`/api/houses/${id}`)).files.length;
  await vi.waitUntil(async () => (await files()) === 3, { timeout: 20_000 });
  assertSound(join(server.folder, 'stillwarm.sqlite'));
  expect(server.told()).toBe('');
});

const start = (folder: string) =>
  spawnSync(process.execPath, [built.cli, 'serve', '--port', '0', '--data', folder], {
    encoding: 'utf8',
    timeout: 60_000,
  });

describe('a data folder that a server has', () => {
  let first: Served;
  beforeAll(async () => {
    first = await served(built.cli);
  });
  afterAll(() => first.end());

  test('is refused to a second one, which says who has it and touches nothing', async () => {
    const bringing = await first.begin(houseFolder);
    const all = () => readdirSync(first.folder, { recursive: true }).toSorted();
    const before = all();
    const { status, stderr } = start(first.folder);
    expect([status, stderr]).toEqual([
      2,
      expect.stringMatching(
        new RegExp(
          `${first.folder} is in use by a dashboard \\(process ${first.child.pid} on .*, since .*stop it`,
        ),
      ),
    ]);
    expect(all()).toEqual(before);
    await first.keep(bringing);
  });

  test('can be backed up and not restored meanwhile', async () => {
    const run = (...args: string[]) =>
      spawnSync(process.execPath, [built.cli, ...args, '--data', first.folder], { encoding: 'utf8' });
    const file = join(first.folder, '..', `${basename(first.folder)}.backup`);
    expect(run('backup', file).status).toBe(0);
    const { status, stderr } = run('restore', file);
    expect([status, stderr]).toEqual([
      2,
      expect.stringMatching(/in use by a dashboard .*nothing was changed/),
    ]);
    expect((await first.json<HousesAnswer>('/api/houses')).houses.length).toBe(1);
    rmSync(file);
  });

  test('is free as soon as that one is gone, also when it was killed', async () => {
    first.child.kill('SIGKILL');
    await once(first.child, 'exit');
    first = await served(built.cli, first.folder);
    expect((await first.json<HousesAnswer>('/api/houses')).houses.length).toBe(1);
  });
});

test('a start on a database that another program holds says so, and works once it is let go', async () => {
  const folder = withoutDemonstration();
  const before = readFileSync(join(folder, DATABASE_FILE));
  const other = new Sqlite(join(folder, DATABASE_FILE));
  other.pragma('locking_mode = EXCLUSIVE');
  other.exec('BEGIN EXCLUSIVE');
  const { status, stderr } = start(folder);
  expect([status, stderr]).toEqual([
    2,
    expect.stringMatching(
      /^The data folder .* Another program holds the database\. Close .*start again\.\n$/,
    ),
  ]);
  other.close();
  expect(readFileSync(join(folder, DATABASE_FILE)).equals(before)).toBe(true);
  await (await served(built.cli, folder)).end();
});

/** As root everything may be written: then it starts as nobody. */
test('a start on a folder that may not be written says so', () => {
  const folder = mkdtempSync(join(tmpdir(), 'stillwarm-closed-'));
  const asRoot = process.getuid?.() === 0;
  chmodSync(folder, 0o555);
  chmodSync(dirname(built.cli), 0o755);
  chmodSync(dirname(dirname(built.cli)), 0o755);
  const closed = spawnSync(process.execPath, [built.cli, 'serve', '--port', '0', '--data', folder], {
    encoding: 'utf8',
    ...(asRoot ? { uid: 65_534, gid: 65_534 } : {}),
  });
  expect([closed.status, closed.stderr]).toEqual([
    2,
    expect.stringMatching(/The data folder .* cannot be used/),
  ]);
  expect(readdirSync(folder)).toEqual([]);
  rmSync(folder, { recursive: true });
});
