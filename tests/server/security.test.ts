import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hono } from 'hono';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Refusal } from '../../server/api/shapes.ts';
import { createApp } from '../../server/app.ts';
import { closedHeaders } from '../../server/security.ts';
import { asJson, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let app: ReturnType<typeof createApp>;
beforeAll(() => {
  server = serverAtHand();
  const pages = join(server.folder, 'pages');
  mkdirSync(join(pages, 'assets'), { recursive: true });
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Pages</title>');
  writeFileSync(join(pages, 'assets/main-1a2b.js'), 'export {};');
  writeFileSync(join(server.folder, 'secret.txt'), 'secret');
  app = createApp(server.services);
});
afterAll(() => server.end());
const get = (path: string, headers: Record<string, string> = {}) =>
  app.request(`http://localhost:8620${path}`, { headers: { Host: 'localhost:8620', ...headers } });
const code = async (response: Response) => ((await response.json()) as Refusal).problems[0].code;

describe('only this machine by a name of its own is answered', () => {
  test.each(['localhost', 'localhost:8620', '127.0.0.1:1', '[::1]:8620'])('as %s', async (Host) => {
    expect((await get('/api/houses', { Host })).status).toBe(200);
  });

  test.each([
    'evil.example',
    'localhost.evil.example',
    '192.168.1.5:8620',
    '127.0.0.1.evil.example',
    'localhost:8620@evil.example',
    '',
  ])('not as “%s”', async (Host) => {
    for (const path of ['/', '/api/houses']) {
      const response = await get(path, { Host });
      expect([response.status, await code(response)]).toEqual([403, 'foreign-host']);
    }
  });
});

describe('another site asks for nothing', () => {
  test.each(['http://evil.example', 'http://localhost:9999', 'null', 'file://', 'nonsense'])(
    'with the origin %s',
    async (Origin) => {
      const response = await app.request('http://localhost:8620/api/houses/x/away', {
        ...asJson('PUT', { away: true }),
        headers: { Host: 'localhost:8620', Origin, 'Content-Type': 'application/json' },
      });
      expect([response.status, await code(response)]).toEqual([403, 'foreign-origin']);
    },
  );

  test('nor without an origin, when the browser says that the request crosses sites', async () => {
    expect((await get('/api/houses', { 'Sec-Fetch-Site': 'cross-site' })).status).toBe(403);
    expect((await get('/api/houses', { 'Sec-Fetch-Site': 'same-origin' })).status).toBe(200);
  });

  test('while our own page may', async () => {
    expect((await get('/api/houses', { Origin: 'http://localhost:8620' })).status).toBe(200);
  });
});

test.each(['/', '/houses/x', '/api/houses', '/api/nothing', '/missing.js'])(
  'every answer carries the security headers: %s',
  async (path) => {
    const { headers } = await get(path);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    expect(headers.get('strict-transport-security')).toBeNull();
  },
);

describe('pages', () => {
  test('the one page answers every address that is no file', async () => {
    for (const path of ['/', '/houses', '/houses/x/nights']) {
      const response = await get(path);
      expect([response.status, response.headers.get('content-type')]).toEqual([
        200,
        'text/html; charset=utf-8',
      ]);
      expect(response.headers.get('cache-control')).toBe('no-cache');
      expect(await response.text()).toContain('<title>Pages</title>');
    }
  });

  test('an asset has its type and may be kept for good', async () => {
    const response = await get('/assets/main-1a2b.js');
    expect(response.headers.get('content-type')).toMatch(/^text\/javascript/);
    expect(response.headers.get('cache-control')).toMatch(/immutable/);
  });

  test('a file that is not there is 404, not the page', async () => {
    const response = await get('/assets/other.js');
    expect([response.status, response.headers.get('cache-control')]).toEqual([404, null]);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..%5csecret.txt',
    '//secret.txt',
  ])('nothing outside their folder is sent: %s', async (path) => {
    const response = await get(path);
    expect(await response.text()).not.toContain('secret');
    expect(response.status).toBe(404);
  });

  test('are asked for with GET only', async () => {
    const response = await app.request('http://localhost:8620/', {
      method: 'POST',
      headers: { Host: 'localhost' },
    });
    expect(response.status).toBe(404);
  });

  test('when they are not built, that is what is said', async () => {
    const bare = createApp({ ...server.services, pages: join(server.folder, 'nowhere') });
    const response = await bare.request('http://localhost/', { headers: { Host: 'localhost' } });
    expect([response.status, await code(response)]).toEqual([503, 'pages-not-built']);
  });
});

test.each(['/api', '/api/', '/api/nothing', '/api/houses/x/y/z'])(
  'an unknown address of the API is a 404 in JSON: %s',
  async (path) => {
    const response = await get(path);
    expect([response.status, await code(response)]).toEqual([404, 'no-such-route']);
  },
);

test('a fault inside is a 500 that tells nothing of the inside, while the terminal gets it', async () => {
  const reading = {
    ...server.services.reading,
    houses: () => {
      throw new Error('SELECT secret FROM /work/secret');
    },
  };
  const broken = createApp({ ...server.services, reading });
  const response = await broken.request('http://localhost/api/houses', { headers: { Host: 'localhost' } });
  expect(response.status).toBe(500);
  expect(await response.text()).not.toMatch(/secret|at |\.ts/);
  expect(server.told.join('\n')).toContain('SELECT secret');
});

test('a page with a stricter policy of its own keeps it, and has the other headers', async () => {
  const own = "default-src 'none'; style-src 'unsafe-inline'";
  const page = new Hono()
    .use(closedHeaders)
    .get('/', (c) => c.body('sheet', 200, { 'Content-Security-Policy': own }));
  const { headers } = await page.request('/');
  expect(headers.get('Content-Security-Policy')).toBe(own);
  expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
});
