/** The whole way in a real browser, on the built dashboard. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

const sample = fileURLToPath(new URL('../../sample-logs', import.meta.url));

let data: string;
let server: Stillwarm;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const asked: string[] = [];

beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'stillwarm-browser-'));
  server = await startStillwarm(data);
  browser = await openBrowser();
  context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
  context.on('request', (request) => asked.push(request.url()));
  page = await context.newPage();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(data, { recursive: true, force: true });
});

/** The files of the demonstration house, as a person would bring them, each with a change or none. */
function folder(change: (name: string, text: string) => string = (_, text) => text) {
  return readdirSync(sample).map((name) => ({
    name,
    mimeType: 'text/plain',
    buffer: Buffer.from(change(name, readFileSync(join(sample, name), 'utf8'))),
  }));
}

/** Drops files onto the page, as from the desk. */
async function drop(files: ReturnType<typeof folder>) {
  const transfer = await page.evaluateHandle(
    (all) => {
      const held = new DataTransfer();
      for (const { name, bytes } of all) held.items.add(new File([new Uint8Array(bytes)], name));
      return held;
    },
    files.map(({ name, buffer }) => ({ name, bytes: [...buffer] })),
  );
  await page.getByRole('main').dispatchEvent('drop', { dataTransfer: transfer });
}

describe('a fresh database', () => {
  test('shows the demonstration house with its answer, labelled as invented', async () => {
    const id = await server.demonstration();
    await page.goto(`${server.address}/house/${id}`);
    await page.getByText('cannot be told yet').first().waitFor();
    expect(await page.getByRole('main').textContent()).toMatch(/It loses between\s\d+\sand\s\d+\sW\/K/);
    expect(await page.locator('body').textContent()).toMatch(/invented/);
  });

  test('axe-core finds nothing on any page', async () => {
    const id = await server.demonstration();
    for (const path of [
      '/',
      '/bring',
      `/house/${id}`,
      `/house/${id}/readings`,
      `/house/${id}/nights`,
      `/house/${id}/design`,
      `/house/${id}/stages`,
      `/house/${id}/gap`,
      `/house/${id}/humidity`,
      `/house/${id}/loggers`,
      `/house/${id}/test`,
    ]) {
      await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
      expect(await axeViolations(page), path).toEqual([]);
    }
  });
});

describe('a house folder', () => {
  test('is brought by drop, shown before it is stored, kept, and its answer is there after a restart', async () => {
    await page.goto(`${server.address}/bring`, { waitUntil: 'networkidle' });
    await drop(
      folder((name, text) =>
        name === 'house.json' ? text.replace('Demonstration house (invented)', 'Our test house') : text,
      ),
    );
    const keep = page.getByRole('button', { name: /keep this house/i });
    await keep.waitFor();
    await expect.poll(() => keep.isEnabled(), { timeout: 30_000 }).toBe(true);
    await keep.click();
    await page.waitForURL(/\/house\//);
    await page
      .getByText(/It loses between/)
      .first()
      .waitFor({ timeout: 60_000 });
    const path = new URL(page.url()).pathname;
    await server.stop();
    server = await startStillwarm(data);
    await page.goto(`${server.address}${path}`);
    await page
      .getByText(/It loses between/)
      .first()
      .waitFor();
    expect(await page.locator('body').textContent()).toMatch(/Our test house/);
  });

  test('with a broken house.json is told with the line and the remedy', async () => {
    await page.goto(`${server.address}/bring`, { waitUntil: 'networkidle' });
    await drop(
      folder((name, text) => (name === 'house.json' ? text.replace('floorAreaM2', 'florAreaM2') : text)),
    );
    await page.getByText(/Did you mean “floorAreaM2”/).waitFor();
    expect(await page.getByRole('main').textContent()).toMatch(/line 8/);
  });
});

test('every link and button of the house’s page is reached by the keyboard', async () => {
  const id = await server.demonstration();
  await page.goto(`${server.address}/house/${id}`, { waitUntil: 'networkidle' });
  // In the night row one Tab stop stands for all nights; the arrow keys walk from night to night.
  const controls = await page.locator('a[href]:not([tabindex="-1"]):visible, button:visible').count();
  const reached = new Set<string>();
  for (let i = 0; i < controls + 40; i++) {
    await page.keyboard.press('Tab');
    reached.add(
      await page.evaluate(() => {
        const all = [...document.querySelectorAll('a[href], button')];
        return String(all.indexOf(document.activeElement ?? document.body));
      }),
    );
  }
  reached.delete('-1');
  expect(reached.size).toBeGreaterThanOrEqual(controls);

  const nights = page.getByRole('list', { name: /^Nights/ });
  await nights.locator('a[tabindex="0"]').focus();
  const name = () => page.evaluate(() => document.activeElement?.getAttribute('href') ?? '');
  const newest = await name();
  await page.keyboard.press('ArrowLeft');
  expect(await name()).not.toBe(newest);
});

test('no request leaves the machine', () => {
  expect(asked.length).toBeGreaterThan(10);
  expect(asked.filter((url) => !/^(http:\/\/127\.0\.0\.1:|data:|blob:)/.test(url))).toEqual([]);
});
