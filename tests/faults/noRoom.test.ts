/**
 * No room on the disk for what is on its way in. `/dev/full` takes nothing and says that the disk is full: it stands in,
 * by a link, for the file that is about to be written.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { HouseDetail, HousesAnswer, Refusal } from '../../server/api/shapes.ts';
import { assertSound } from '../../server/store/soundness.ts';
import { houseFolder, insideFrom } from '../server/inventedHouse.ts';
import { filePath, heldCalculation, raw, type ServerAtHand, serverAtHand } from '../server/serverAtHand.ts';
import { bundled } from './bundled.ts';
import { contentOf } from './kills/content.ts';
import { served } from './served.ts';

const FULL = '/dev/full';
const told = async (response: Response) => {
  const { problems } = (await response.json()) as Refusal;
  return [response.status, ...problems.map(({ code }) => code)];
};

describe.skipIf(!existsSync(FULL))('on a full disk', () => {
  let server: ServerAtHand;
  let id: string;
  let before: string;
  beforeEach(async () => {
    server = serverAtHand({ calculate: heldCalculation().calculate });
    id = await server.bring(houseFolder);
    before = content();
  });
  afterEach(async () => {
    await server.end();
    expect(statSync(FULL).isCharacterDevice()).toBe(true);
  });
  const content = () => contentOf(join(server.folder, 'stillwarm.sqlite'));
  const staged = (...names: string[]) => join(server.folder, 'bringing', ...names);
  const files = async () =>
    (await server.json<HouseDetail>(`/api/houses/${id}`)).files.map(({ file }) => file);

  test('an upload is refused, nothing of it stays, and it is taken once there is room', async () => {
    const bringing = await server.begin(id);
    symlinkSync(FULL, staged(bringing.id, '1'));
    const put = () => server.ask(filePath(bringing.id, 'in.csv'), raw(insideFrom(400, 500)));
    expect(await told(await put())).toEqual([507, 'storage-full']);
    expect(readdirSync(staged(bringing.id))).toEqual([]);
    expect((await put()).status).toBe(200);
    expect((await bringing.keep()).status).toBe(201);
    expect(await files()).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
  });

  test('the readings of a folder are refused, nothing of them stays, and the same folder is kept once there is room', async () => {
    const bringing = await server.begin(id);
    await bringing.put({ 'in.csv': insideFrom(400, 500) });
    mkdirSync(staged(bringing.id, '2'));
    symlinkSync(FULL, staged(bringing.id, '2', '0'));
    expect(await told(await bringing.keep())).toEqual([507, 'storage-full']);
    await vi.waitUntil(() => readdirSync(staged(bringing.id)).length === 1);
    expect(content()).toBe(before);
    expect((await bringing.keep()).status).toBe(201);
    expect(await files()).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
  });

  test.each(['joined', '0'])(
    'a posting is refused, nothing of it stays, and it is taken once there is room (%s)',
    async (file) => {
      const post = (from: number, to: number) =>
        server.ask(`/api/houses/${id}/readings?file=in.csv`, {
          method: 'POST',
          headers: { 'Content-Type': 'text/csv' },
          body: insideFrom(from, to),
        });
      expect((await post(440, 450)).status).toBe(200);
      before = content();
      const { bringings } = server.services;
      const { put } = bringings;
      Object.assign(bringings, {
        put: async (...args: Parameters<typeof put>) => {
          Object.assign(bringings, { put });
          mkdirSync(staged(args[0], '2'));
          symlinkSync(FULL, staged(args[0], '2', file));
          return put(...args);
        },
      });
      expect(await told(await post(450, 460))).toEqual([507, 'storage-full']);
      expect([content(), readdirSync(staged())]).toEqual([before, []]);
      expect((await post(450, 460)).status).toBe(200);
      expect(await files()).toEqual(['in.csv', 'logs/out.csv', 'in (2).csv']);
    },
  );
});

/** The system refuses a process to write files larger than so many bytes: as full as a disk gets without being root's. */
function atMost(pid: number | undefined, bytes: number | 'unlimited'): void {
  execFileSync('prlimit', ['--pid', String(pid), `--fsize=${bytes}:unlimited`]);
}
const hasLimits = process.platform === 'linux' && existsSync('/usr/bin/prlimit');

test.skipIf(!hasLimits)(
  'a server to which the system gives no room says so, lives on, and takes all once it does',
  { timeout: 120_000 },
  async () => {
    const built = await bundled();
    const server = await served(built.cli);
    const database = join(server.folder, 'stillwarm.sqlite');
    const ask = (path: string, init: RequestInit) => fetch(`${server.url}${path}`, init);
    const keep = (bringing: string) => ask(`/api/bringings/${bringing}/keep`, { method: 'POST' });
    const id = await server.keep(await server.begin(houseFolder));
    const before = contentOf(database);
    const bringing = await server.begin({ 'in.csv': insideFrom(400, 2000) }, id);

    atMost(server.child.pid, 4096);
    const long = insideFrom(0, 20_000);
    expect(await told(await ask(filePath(bringing, 'long.csv'), raw(long)))).toEqual([
      507,
      'storage-too-small',
    ]);
    expect(readdirSync(join(server.folder, 'bringing', bringing))).toHaveLength(1);
    expect(await told(await keep(bringing))).toEqual([507, 'storage-too-small']);
    const away = await ask(`/api/houses/${id}`, { method: 'DELETE' });
    expect(await told(away)).toEqual([503, 'storage-failing']);
    expect(contentOf(database)).toBe(before);
    expect((await server.json<HousesAnswer>('/api/houses')).houses.length).toBe(1);

    atMost(server.child.pid, 'unlimited');
    expect((await keep(bringing)).status).toBe(201);
    expect((await ask(`/api/houses/${id}`, { method: 'DELETE' })).status).toBe(204);
    expect(server.told()).not.toMatch(/ at .*:\d+/);
    assertSound(database);
    await server.end();
    built.remove();
  },
);
