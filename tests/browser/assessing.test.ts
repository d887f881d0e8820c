/** An assessment on the house's page: under way, stopped, asked for again, and impossible. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

vi.setConfig({ testTimeout: 180_000, hookTimeout: 180_000 });

let data: string;
let server: Stillwarm;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'stillwarm-assessing-'));
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
  rmSync(data, { recursive: true, force: true });
});
beforeEach(async () => {
  page = await browser.newPage({ locale: 'en-GB' });
  server = await startStillwarm(data);
});
afterEach(async () => {
  await page.close();
  await server.stop();
});

const answer = () => page.getByText(/It loses between/).first();

/** Another start, with the database changed in between: what was assessed is assessed anew. */
async function startAgain(sql: string) {
  await server.stop();
  const db = new Sqlite(join(data, 'stillwarm.sqlite'));
  db.exec(`${sql}; UPDATE house SET content = content || 'x'`);
  db.close();
  server = await startStillwarm(data);
}

test('one that is stopped says so, and when it is asked for again its answer comes without a reload', async () => {
  const id = await server.demonstration();
  // Ten times the readings, so that there is time to stop it.
  await startAgain(
    "UPDATE original SET content = CAST(replace(hex(zeroblob(9)), '00', CAST(content AS TEXT)) || content AS BLOB) " +
      "WHERE sha256 IN (SELECT sha256 FROM file WHERE name <> 'heater.csv')",
  );
  await page.goto(`${server.address}/house/${id}`);
  await page.getByText(/^Reading .+, file \d+ of 7\.$/).waitFor();
  await page.getByRole('button', { name: 'Stop it' }).click();
  await page.getByText(/^The assessment was stopped before its end\./).waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Assess it' }).waitFor();
  expect(await answer().count()).toBe(0);
  await page.getByRole('button', { name: 'Assess it' }).click();
  await answer().waitFor({ timeout: 120_000 });
});

test('one that is not possible says why, and what to do', async () => {
  const id = await server.demonstration();
  await startAgain(
    "UPDATE original SET content = CAST('no log at all' AS BLOB) " +
      "WHERE sha256 IN (SELECT sha256 FROM file WHERE name <> 'outside.csv')",
  );
  await page.goto(`${server.address}/house/${id}`);
  await page.getByText('There is no answer yet.').waitFor();
  expect(await page.getByRole('main').textContent()).toMatch(
    /No readable inside temperature remains.*Check the loggers with "place": "inside"/,
  );
  await answer().waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Assess it/ }).waitFor();
});
