/** Who may look, attacked: without a passphrase, from elsewhere, by a link that reaches for more. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { join } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { accessOf } from '../../server/access/access.ts';
import { linkRoutes, openRoutes } from '../../server/access/linkRoutes.ts';
import { hashOf } from '../../server/access/passphrase.ts';
import type { LinksAnswer, MadeLink, SharedBringing, SharedHouse } from '../../server/api/accessShapes.ts';
import type { HouseDetail, ReadingsAnswer, Refusal } from '../../server/api/shapes.ts';
import { MOST_FILES } from '../../server/api/sharedBringings.ts';
import { createApp } from '../../server/app.ts';
import { bedroom, houseFolder, insideFrom } from './inventedHouse.ts';
import { asJson, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

const PASSPHRASE = 'four dry timber walls';
/** What a guess costs is looked at in the test of the passphrase. */
const CHEAP = { N: 16, r: 8, p: 1, maxmem: 2 ** 20 };
const HOST = '192.0.2.7:8620';
let server: ServerAtHand;
let app: ReturnType<typeof createApp>;
let passphrase: string;
let current: { hash: string | null };
let house: string;
let other: string;

const named = (name: string) => ({
  ...houseFolder,
  'house.json': houseFolder['house.json'].replace('Test house', name),
});
beforeAll(async () => {
  passphrase = await hashOf(PASSPHRASE, CHEAP);
  server = serverAtHand();
  // As when they are built: the pages answer every address that is left.
  mkdirSync(join(server.folder, 'pages'));
  writeFileSync(join(server.folder, 'secret.txt'), 'SECRET');
  writeFileSync(join(server.folder, 'pages/index.html'), '<!doctype html><title>Pages</title>');
  house = await server.bring(houseFolder);
  other = await server.bring(named('Next door'));
  return () => server.end();
});
beforeEach(() => {
  app = served();
  server.told.length = 0;
});

/** Open to others at an address of its own; the passphrase may be changed by `current`. */
function served(origin: string | null = null) {
  current = { hash: passphrase };
  const access = accessOf({ host: '192.0.2.7', origin, dataFolder: '', given: null });
  if (access.door === null) throw new Error('it serves others');
  return createApp(server.services, { ...access, door: { ...access.door, passphrase: () => current.hash } });
}

interface Asked extends RequestInit {
  readonly cookie?: string;
  readonly host?: string;
  readonly origin?: string | null;
}
function ask(path: string, { cookie, host = HOST, origin, ...init }: Asked = {}) {
  const own = origin === undefined ? `http://${host}` : origin;
  return app.request(`http://${HOST}${path}`, {
    ...init,
    headers: {
      Host: host,
      ...(own === null ? {} : { Origin: own }),
      ...(cookie === undefined ? {} : { Cookie: cookie }),
      ...(init.headers as Record<string, string>),
    },
  });
}
const codes = async (response: Response) => [
  response.status,
  ...((await response.json()) as Refusal).problems.map(({ code }) => code),
];
const cookieOf = (response: Response) => (response.headers.get('set-cookie') ?? '').split(';')[0];
const signIn = (tried = PASSPHRASE, more: Asked = {}) =>
  ask('/api/access/sign-in', { ...asJson('POST', { passphrase: tried }), ...more });
const signedIn = async () => cookieOf(await signIn());

async function makeLink(scope: 'see' | 'add', id = house): Promise<string> {
  const wanted = asJson('POST', { scope, whose: 'The Millers', days: 30 });
  const response = await ask(`/api/houses/${id}/links`, { ...wanted, cookie: await signedIn() });
  return ((await response.json()) as MadeLink).path;
}
const opened = async (path: string) => cookieOf(await ask(path, { origin: null }));

describe('a server that others reach', () => {
  test('shows nobody anything before the passphrase, and the house after it', async () => {
    expect(await codes(await ask('/api/houses'))).toEqual([401, 'sign-in-first']);
    expect((await ask('/api/houses', { cookie: await signedIn() })).status).toBe(200);
  });

  test('is closed behind a proxy on this machine too', async () => {
    const access = accessOf({
      host: '127.0.0.1',
      origin: 'https://houses.example',
      dataFolder: '',
      given: passphrase,
    });
    app = createApp(server.services, access);
    for (const host of ['localhost:8620', 'houses.example'])
      expect(await codes(await ask('/api/houses', { host, origin: null }))).toEqual([401, 'sign-in-first']);
  });

  test('believes no cookie that it did not give, and none that was signed out', async () => {
    const cookie = await signedIn();
    const [name] = cookie.split('=');
    for (const forged of [`${name}=`, `${name}=${'A'.repeat(43)}`, `${cookie}x`, cookie.slice(0, -1)])
      expect((await ask('/api/houses', { cookie: forged })).status).toBe(401);
    await ask('/api/access/sign-out', { method: 'POST', cookie });
    expect((await ask('/api/houses', { cookie })).status).toBe(401);
  });

  test('ends every session when the passphrase is another, or none', async () => {
    const cookie = await signedIn();
    current.hash = await hashOf('five dry timber walls', CHEAP);
    expect((await ask('/api/houses', { cookie })).status).toBe(401);
    current.hash = null;
    expect(await codes(await signIn())).toEqual([409, 'no-passphrase']);
  });

  test('makes whoever guesses wait and says how long, however many guesses come at once', async () => {
    const guesses = await Promise.all(Array.from({ length: 8 }, () => signIn('open the door please')));
    expect(guesses.map(({ status }) => status).filter((it) => it === 429)).toHaveLength(3);
    const refusal = (await (await signIn()).json()) as Refusal;
    expect(refusal.problems[0]).toMatchObject({ code: 'too-many-guesses' });
    expect(refusal.problems[0].remedy).toMatch(/^Wait \d+ s, then try again\.$/);
  });

  test('gives a cookie that no script and no other site gets, and none without TLS where there is TLS', async () => {
    const plain = (await signIn()).headers.get('set-cookie') ?? '';
    expect(plain).toMatch(/; HttpOnly/);
    expect(plain).toMatch(/; SameSite=Strict/);
    expect(plain).not.toMatch(/; Secure/);
    app = served('https://houses.example');
    const byTls = await signIn(PASSPHRASE, { host: 'houses.example', origin: 'https://houses.example' });
    expect(byTls.headers.get('set-cookie')).toMatch(/^__Host-stillwarm=.*; Secure/);
    expect(byTls.headers.get('strict-transport-security')).toBe('max-age=15552000');
    expect(await codes(await signIn())).toEqual([403, 'only-by-tls']);
  });

  test('changes nothing for a page of another site, nor for one that does not say where it is from', async () => {
    const cookie = await signedIn();
    for (const origin of ['http://evil.example', 'https://192.0.2.7:8620', 'null', null])
      expect(await codes(await ask(`/api/houses/${house}`, { method: 'DELETE', cookie, origin }))).toEqual([
        403,
        'foreign-origin',
      ]);
    expect((await ask(`/api/houses/${house}`, { cookie })).status).toBe(200);
  });

  test('takes the method that the request has, and no other that is written into it', async () => {
    const cookie = await signedIn();
    await ask(`/api/houses/${house}?_method=DELETE`, {
      cookie,
      method: 'POST',
      headers: { 'X-HTTP-Method-Override': 'DELETE', 'X-HTTP-Method': 'DELETE' },
    });
    expect((await ask(`/api/houses/${house}`, { cookie })).status).toBe(200);
  });

  test.each([
    '192.0.2.8:8620',
    '192.0.2.7.:8620',
    '192.0.2.7:8620:80',
    '192.0.2.7:8620@evil.example',
    'evil.example#192.0.2.7',
    '3221225991',
    '[::ffff:192.0.2.7]',
    'houses.example',
    '',
  ])('is not called “%s”', async (host) => {
    expect(await codes(await ask('/', { host, origin: null }))).toEqual([403, 'foreign-host']);
  });

  test('believes nothing that is forwarded', async () => {
    const headers = { 'X-Forwarded-Host': HOST, 'X-Forwarded-Proto': 'https', Forwarded: `host=${HOST}` };
    expect((await ask('/', { host: 'evil.example', origin: null, headers })).status).toBe(403);
    const from = (i: number): Asked => ({
      headers: { 'Content-Type': 'application/json', 'X-Forwarded-For': `10.0.0.${i}` },
    });
    for (let i = 0; i < 6; i++) await signIn('wrong, wrong, wrong', from(i));
    expect((await signIn(PASSPHRASE, from(99))).status).toBe(429);
  });

  test('writes down each request without anything that opens a door', async () => {
    const link = await makeLink('see');
    await ask(`${link}?x=${PASSPHRASE}`, { origin: null });
    await ask(`/api/houses/${house}?passphrase=${PASSPHRASE}`, { cookie: await signedIn() });
    await ask(`/nowhere/${link.slice(3)}`, { origin: null });
    const log = server.told.join('\n');
    expect(log).toMatch(/^\d{4}-\S+Z POST \/api\/access\/sign-in 200 - B \d+ ms$/m);
    expect(log).toMatch(/ GET \/l\/:token 303 /);
    expect(log).toMatch(/ GET \/api\/houses\/:id 200 /);
    for (const secret of [PASSPHRASE, 'timber', link.slice(3), house]) expect(log).not.toContain(secret);
  });
});

describe('a link', () => {
  test('opens its own house, leaves the address, and is stored as a hash only', async () => {
    const path = await makeLink('see');
    const token = path.slice('/l/'.length);
    expect(Buffer.from(token, 'base64url').length * 8).toBeGreaterThanOrEqual(128);
    const response = await ask(path, { origin: null });
    expect([response.status, response.headers.get('location')]).toEqual([303, '/shared']);
    expect(response.headers.get('set-cookie')).toMatch(/; Path=\/api\/shared; .*HttpOnly; SameSite=Strict/);
    const shared = await ask('/api/shared', { cookie: cookieOf(response), origin: null });
    expect((await shared.json()) as SharedHouse).toMatchObject({ name: 'Test house', mayAdd: false });
    expect(JSON.stringify(server.db.prepare('SELECT * FROM link').all())).not.toContain(token);
  });

  test.each(['see', 'add'] as const)(
    'that may %s reaches what is written down for it, and no other route of the whole application',
    async (scope) => {
      const cookie = await opened(await makeLink(scope));
      const reached: string[] = [];
      const routes = new Map(app.routes.map(({ method, path }) => [`${method} ${path}`, { method, path }]));
      for (const [route, { method, path }] of routes) {
        if (method === 'ALL' || !path.startsWith('/api')) continue;
        for (const id of [house, other]) {
          const address = path
            .replace(':id', id)
            .replace(/:(\w+)(\{[^}]*\})?/g, (_, name) => (name === 'date' ? '2027-01-10' : 'x'));
          const response = await ask(address, { method, cookie });
          await response.body?.cancel();
          if (![401, 403].includes(response.status)) reached.push(route);
        }
      }
      const allowed = [...linkRoutes].flatMap(([route, needs]) =>
        needs === 'see' || scope === 'add' ? [route] : [],
      );
      const listed = new Set([...allowed, ...openRoutes]);
      // Signing in without a passphrase in the body is a 400: the door itself is for everybody.
      expect([...new Set(reached)].sort()).toEqual([...listed].sort());
      for (const id of [house, other]) expect(server.services.reading.house(id)).not.toBeNull();
    },
  );

  test('has no address in which a house is named', () => {
    for (const route of linkRoutes.keys()) expect(route).toMatch(/^[A-Z]+ \/api\/shared(\/|$)/);
  });

  test('reaches nothing by another spelling of an address', async () => {
    const cookie = await opened(await makeLink('add'));
    for (const path of [
      `/api/shared/../houses/${house}`,
      `/api/shared/%2e%2e/houses/${house}`,
      `/api//houses/${house}`,
      `/api/shared%2f..%2fhouses/${house}`,
      `/API/houses/${house}`,
      `/%61pi/houses/${house}`,
      `/api/%68ouses/${house}`,
      `/api/houses/${house}/`,
      `/api/houses/${house}/folder.zip`,
      '/api/shared/readings/../../houses',
      '/api',
    ])
      expect((await (await ask(path, { cookie })).text()).includes('loggers'), path).toBe(false);
    expect((await ask(`/api/houses/${house}`, { cookie, method: 'HEAD' })).status).toBe(401);
  });

  test('shows results without what the builder set, noted and brought', async () => {
    const noted = asJson('POST', { at: '2027-01-11T08:00', text: 'loft hatch open' });
    await ask(`/api/houses/${house}/notes`, { ...noted, cookie: await signedIn() });
    const cookie = await opened(await makeLink('see'));
    const shared = (await (await ask('/api/shared', { cookie })).json()) as SharedHouse &
      Partial<HouseDetail>;
    expect([shared.house, shared.files, shared.imports, shared.assessment?.imports]).toEqual([
      undefined,
      undefined,
      undefined,
      [],
    ]);
    const readings = (await (await ask('/api/shared/readings', { cookie })).json()) as ReadingsAnswer;
    expect([readings.channels.length, readings.notes]).toEqual([2, []]);
  });

  test('is refused like anybody where it asks amiss', async () => {
    const cookie = await opened(await makeLink('see'));
    expect(await codes(await ask('/api/shared/readings?points=1', { cookie }))).toEqual([
      400,
      'request-not-understood',
    ]);
    const unassessed = await server.bring(named('Not assessed yet'));
    server.db
      .prepare('DELETE FROM outcome WHERE house = (SELECT number FROM house WHERE id = ?)')
      .run(unassessed);
    const early = await opened(await makeLink('see', unassessed));
    expect(await codes(await ask('/api/shared/first-page.html', { cookie: early }))).toEqual([
      409,
      'not-assessed',
    ]);
  });

  test('ends when it is taken back, when it runs out, and with its house', async () => {
    const owner = await signedIn();
    const gone = await server.bring(named('To be deleted'));
    const [taken, run, deleted] = [await makeLink('see'), await makeLink('see'), await makeLink('add', gone)];
    const cookies = [await opened(taken), await opened(run), await opened(deleted)];
    const answer = await ask(`/api/houses/${house}/links`, { cookie: owner });
    const links = ((await answer.json()) as LinksAnswer).links.slice(-2);
    await ask(`/api/houses/${house}/links/${links[0].number}`, { method: 'DELETE', cookie: owner });
    server.db.prepare('UPDATE link SET until_s = 1 WHERE number = ?').run(links[1].number);
    await ask(`/api/houses/${gone}`, { method: 'DELETE', cookie: owner });
    for (const cookie of cookies)
      expect(await codes(await ask('/api/shared', { cookie }))).toEqual([401, 'link-ended']);
    for (const path of [taken, run, deleted]) {
      const response = await ask(path, { origin: null });
      expect([response.headers.get('location'), response.headers.get('set-cookie')]).toEqual([
        '/shared?ended',
        null,
      ]);
    }
  });

  test('of one house does not take back that of another', async () => {
    await makeLink('see', other);
    const owner = await signedIn();
    const [{ number }] = server.services.reading.links(other);
    const response = await ask(`/api/houses/${house}/links/${number}`, { method: 'DELETE', cookie: owner });
    expect(await codes(response)).toEqual([404, 'no-such-link']);
  });
});

describe('a link that may add', () => {
  let cookie: string;
  beforeEach(async () => {
    cookie = await opened(await makeLink('add'));
  });
  const begin = async (by = cookie) =>
    ((await (await ask('/api/shared/bringings', { method: 'POST', cookie: by })).json()) as { id: string })
      .id;
  const put = (id: string, name: string, body: string, more: Record<string, string> = {}) =>
    ask(`/api/shared/bringings/${id}/files/${encodeURIComponent(name)}`, {
      method: 'PUT',
      cookie,
      body,
      headers: {
        'Content-Type': 'application/octet-stream',
        'Content-Length': String(Buffer.byteLength(body)),
        ...more,
      },
    });
  const keep = (id: string, by = cookie) =>
    ask(`/api/shared/bringings/${id}/keep`, { method: 'POST', cookie: by });

  test('adds a later export of a logger to its house', async () => {
    const id = await begin();
    expect((await put(id, 'export.csv', insideFrom(400, 500))).status).toBe(200);
    const seen = (await (await ask(`/api/shared/bringings/${id}`, { cookie })).json()) as SharedBringing;
    expect(seen).toMatchObject({ ready: true, files: [{ change: { kind: 'continues', newReadings: 68 } }] });
    expect(Object.keys(seen).sort()).toEqual(['files', 'ready']);
    expect((await keep(id)).status).toBe(204);
    expect(server.services.reading.files(house).map(({ file }) => file)).toContain('export.csv');
    expect(server.services.reading.versions(other)).toHaveLength(1);
  });

  test('adds nothing that lies years from what the house has: its clock was not set', async () => {
    const id = await begin();
    const before = server.services.reading.versions(house).length;
    await put(id, 'in.csv', 'Time,Temperature (°C)\n2031-01-01 10:00,18\n');
    expect(await codes(await keep(id))).toEqual([422, 'readings-far-off']);
    expect(server.services.reading.versions(house)).toHaveLength(before);
  });

  test.each(['house.json', 'HOUSE.JSON', 'a/house.json', '../in.csv', '..\\in.csv', 'page.html', 'x.csv\0'])(
    'brings no settings, and no file called “%s”',
    async (name) => {
      const response = await put(await begin(), name, '{}');
      expect([400, 404]).toContain(response.status);
    },
  );

  test('adds no logger that the builder did not place, and keeps nothing when there is nothing new', async () => {
    const id = await begin();
    const before = server.services.reading.versions(house).length;
    await put(id, 'bedroom.csv', bedroom);
    expect(await codes(await keep(id))).toEqual([409, 'nothing-new']);
    expect(server.services.reading.versions(house)).toHaveLength(before);
  });

  test('does not reach what others bring, nor do others reach its own', async () => {
    const byBuilder = await server.services.bringings.start(house);
    expect((await put(byBuilder, 'in.csv', 'x')).status).toBe(404);
    expect((await keep(byBuilder)).status).toBe(404);
    const id = await begin();
    const neighbour = await opened(await makeLink('add', other));
    expect((await keep(id, neighbour)).status).toBe(404);
    expect((await ask(`/api/shared/bringings/${id}`, { cookie: neighbour })).status).toBe(404);
  });

  test('fills no disk: files, their size, and what is left lying are bounded', async () => {
    const left = await begin();
    const id = await begin();
    expect((await put(left, 'in.csv', 'x')).status).toBe(404);
    expect(await codes(await put(id, 'in.csv', 'x', { 'Content-Length': '300000000' }))).toEqual([
      413,
      'too-much',
    ]);
    for (let i = 0; i < MOST_FILES; i++) await put(id, `in${i}.csv`, 'x');
    expect(await codes(await put(id, 'one more.csv', 'x'))).toEqual([413, 'too-much']);
  });
});

describe('on a real socket', () => {
  let listening: Server;
  let port: number;
  beforeEach(async () => {
    listening = createAdaptorServer({ fetch: app.fetch, createServer }) as Server;
    await new Promise<void>((done) => listening.listen(0, '127.0.0.1', done));
    port = (listening.address() as AddressInfo).port;
    return () => {
      listening.closeAllConnections();
      listening.close();
    };
  });
  /** What comes back for these very bytes. */
  const sent = (bytes: string) =>
    new Promise<string>((resolve) => {
      const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
      let answer = '';
      socket.on('data', (chunk) => {
        answer += chunk;
        if (!bytes.includes('Connection: close') && answer.includes('\r\n\r\n')) socket.destroy();
      });
      socket.on('close', () => resolve(answer));
      socket.on('error', () => {});
    });

  test.each([
    ['without a host', 'GET /api/houses HTTP/1.1\r\n\r\n'],
    ['without a host, as it was before there were hosts', 'GET /api/houses HTTP/1.0\r\n\r\n'],
    [
      'for a foreign address that is written out',
      'GET http://evil.example/ HTTP/1.1\r\nHost: evil.example\r\n\r\n',
    ],
    ['with two hosts', `GET /api/houses HTTP/1.1\r\nHost: ${HOST}\r\nHost: evil.example\r\n\r\n`],
    ['with a head without end', `GET / HTTP/1.1\r\nHost: ${HOST}\r\nX: ${'x'.repeat(70_000)}\r\n\r\n`],
    [
      'with two lengths',
      `POST /api/access/sign-in HTTP/1.1\r\nHost: ${HOST}\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`,
    ],
  ])('a request %s is refused', async (_, bytes) => {
    expect(await sent(bytes)).toMatch(/^HTTP\/1\.1 4\d\d /);
  });

  test.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..%5csecret.txt',
    '/..\\secret.txt',
    '/%252e%252e/secret.txt',
    '/%c0%ae%c0%ae/secret.txt',
    '/..;/secret.txt',
    '//../secret.txt',
    '/secret.txt%00.html',
    '/%',
    '/%ff',
  ])('no address as it stands on the line leads out of the pages: %s', async (path) => {
    const answer = await sent(`GET ${path} HTTP/1.1\r\nHost: ${HOST}\r\nConnection: close\r\n\r\n`);
    expect(answer).toMatch(/^HTTP\/1\.1 (200|4\d\d) /);
    expect(answer).not.toContain('SECRET');
  });

  test('guesses are counted by the address of the other end, and the log has the bytes', async () => {
    const address = `http://127.0.0.1:${port}`;
    for (let i = 0; i < 6; i++) {
      const response = await fetch(`${address}/api/access/sign-in`, {
        ...asJson('POST', { passphrase: 'wrong, wrong, wrong' }),
        headers: { 'Content-Type': 'application/json', Origin: address, 'X-Forwarded-For': `10.0.0.${i}` },
      });
      expect(response.status).toBe(i < 5 ? 401 : 429);
    }
    await expect
      .poll(() => server.told.join('\n'))
      .toMatch(/POST \/api\/access\/sign-in 429 \d{3,} B \d+ ms/);
  });
});
