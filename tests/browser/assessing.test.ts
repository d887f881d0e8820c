/** An assessment on the house's page: under way, stopped, asked for again, and impossible. */
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { startStillwarm } from './startStillwarm.ts';

const { data, browser, demonstration: id, ...first } = await atHand();
let server = first.server;
let page: Page;
afterAll(async () => {
  await server.stop();
  await first.end();
});
beforeEach(async () => {
  page = await browser.newPage({ locale: 'en-GB' });
});
afterEach(() => page.close());

const answer = () => page.getByText(/It loses between/).first();

/** Another start, with the database changed in between: what was assessed is assessed anew. */
async function startAgain(sql = '') {
  await server.stop();
  const db = new Sqlite(join(data, 'stillwarm.sqlite'));
  db.exec(`${sql}UPDATE house SET figures = figures || 'x'`);
  db.close();
  server = await startStillwarm(data);
}

test('one that is stopped says so, and when it is asked for again its answer comes without a reload', async () => {
  await startAgain();
  await page.goto(`${server.address}/house/${id}`);
  await page.getByRole('progressbar').waitFor();
  await page.getByRole('button', { name: 'Stop it' }).click();
  await page.getByText(/^The assessment was stopped before its end\./).waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Assess it' }).waitFor();
  expect(await answer().count()).toBe(0);
  await page.getByRole('button', { name: 'Assess it' }).click();
  await answer().waitFor({ timeout: 120_000 });
});

test('one that is not possible says why, and what to do', async () => {
  await startAgain(
    "UPDATE original SET content = CAST('no log at all' AS BLOB) " +
      "WHERE sha256 IN (SELECT sha256 FROM file WHERE name <> 'outside.csv');",
  );
  await page.goto(`${server.address}/house/${id}`);
  await page.getByText('There is no answer yet.').waitFor();
  expect(await page.getByRole('main').textContent()).toMatch(
    /No readable inside temperature remains.*Check the loggers with "place": "inside"/,
  );
  await answer().waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Assess it/ }).waitFor();
});
