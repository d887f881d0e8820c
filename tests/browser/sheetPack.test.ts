/** The handover pack from the page and back into it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

const data = mkdtempSync(join(tmpdir(), 'stillwarm-pack-'));
let server: Stillwarm;
let browser: Browser;
let page: Page;
let pack: Uint8Array;

beforeAll(async () => {
  server = await startStillwarm(data);
  browser = await openBrowser();
  page = await browser.newPage();
  const id = await server.demonstration();
  await page.goto(`${server.address}/house/${id}`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'The handover pack as a zip' }).click(),
  ]);
  pack = readFileSync(await download.path());
}, 240_000);

afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(data, { recursive: true, force: true });
});

const bring = (bytes: Uint8Array) =>
  page
    .getByLabel('Bring a handover pack back in')
    .setInputFiles({ name: 'pack.zip', mimeType: 'application/zip', buffer: Buffer.from(bytes) });

const houses = async () =>
  ((await (await fetch(`${server.address}/api/houses`)).json()) as { houses: { id: string }[] }).houses;

test('a pack in which a file was changed is refused, the file is named, and nothing is stored', async () => {
  const files = unzipSync(pack);
  const text = new TextDecoder().decode(files['living.csv']);
  files['living.csv'] = new TextEncoder().encode(text.replace('19.', '18.'));
  await bring(zipSync(files));
  const refusal = page.getByRole('alert').filter({ hasText: 'not the one that was packed' });
  await refusal.waitFor();
  expect(await refusal.textContent()).toContain('living.csv');
  expect(await houses()).toHaveLength(1);
  expect(await axeViolations(page)).toEqual([]);
});

test('a pack as it was made becomes a house of its own', async () => {
  await bring(pack);
  await page.getByText(/Every file is as it was packed by Stillwarm/).waitFor({ timeout: 60_000 });
  expect(await houses()).toHaveLength(2);
  await page.getByRole('link', { name: 'The house is here' }).click();
  await page.waitForURL(/\/house\//);
});

test('the sheet and its first page come as files', async () => {
  const [one] = await houses();
  await page.goto(`${server.address}/house/${one.id}`);
  for (const name of ['The handover sheet', 'Its first page alone']) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name, exact: true }).click(),
    ]);
    expect(readFileSync(await download.path(), 'utf8')).toContain('evidence, not a certificate');
  }
});
