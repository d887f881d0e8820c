/** The house's first page, the house as drawn, and what a broken house.json says, on the built dashboard. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';

const sample = fileURLToPath(new URL('../../sample-logs', import.meta.url));

const { server, browser, demonstration: id, end } = await atHand();
afterAll(end);
let page: Page;
beforeAll(async () => {
  page = await browser.newPage({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
});

/** The files of the demonstration house, as a person would bring them, each with a change or none. */
function folder(change: (name: string, text: string) => string = (_, text) => text) {
  return readdirSync(sample).map((name) => ({
    name,
    mimeType: 'text/plain',
    buffer: Buffer.from(change(name, readFileSync(join(sample, name), 'utf8'))),
  }));
}

test('the demonstration house is shown with its answer, labelled as invented', async () => {
  await page.goto(`${server.address}/house/${id}`);
  await page.getByText('cannot be told yet').first().waitFor();
  expect(await page.getByRole('main').textContent()).toMatch(/It loses between\s\d+\sand\s\d+\sW\/K/);
  expect(await page.locator('body').textContent()).toMatch(/invented/);
});

/** Of the other pages their own tests ask it. */
test('axe-core finds nothing on the house as drawn', async () => {
  await page.goto(`${server.address}/house/${id}/design`, { waitUntil: 'networkidle' });
  expect(await axeViolations(page)).toEqual([]);
});

test('a broken house.json is told with the line and the remedy', async () => {
  await page.goto(`${server.address}/bring`);
  await page
    .getByLabel('Or pick the files')
    .setInputFiles(
      folder((name, text) => (name === 'house.json' ? text.replace('floorAreaM2', 'florAreaM2') : text)),
    );
  await page.getByText(/Did you mean “floorAreaM2”/).waitFor();
  expect(await page.getByRole('main').textContent()).toMatch(/line 8/);
});

test('every link and button of the house’s page is reached by the keyboard', async () => {
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
