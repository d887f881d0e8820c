/** Served to others: the builder signs in and makes a link, the homeowner opens it on a phone and sees one house. */
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

const PASSPHRASE = 'four dry timber walls';
const sample = new URL('../../sample-logs/', import.meta.url);
const data = mkdtempSync(join(tmpdir(), 'stillwarm-access-'));
let server: Stillwarm;
let browser: Browser;
let builder: Page;
let phone: BrowserContext;
let home: Page;
/** What was told in the consoles, such as what the policy against foreign script refused. */
const complaints: string[] = [];

beforeAll(async () => {
  cpSync(inject('demonstrationData'), data, { recursive: true });
  [server, browser] = await Promise.all([startStillwarm(data, PASSPHRASE), openBrowser()]);
  builder = await browser.newPage({ locale: 'en-GB' });
  phone = await browser.newContext({ locale: 'en-GB', viewport: { width: 360, height: 780 } });
  home = await phone.newPage();
  for (const page of [builder, home])
    page.on('console', (it) => {
      if (it.type() === 'error' && /policy/i.test(it.text())) complaints.push(it.text());
    });
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(data, { recursive: true, force: true });
});
const main = (page: Page) => page.getByRole('main').textContent();

test('the builder is asked for the passphrase, told of a wrong one, and led to the page that was wanted', async () => {
  await builder.goto(`${server.address}/?from=here`);
  await builder.getByRole('heading', { name: 'Sign in' }).waitFor();
  expect(await axeViolations(builder)).toEqual([]);
  await builder.keyboard.type('open the door, please');
  await builder.keyboard.press('Enter');
  await builder.getByText('This is not the passphrase.').waitFor();
  await builder.keyboard.type(PASSPHRASE);
  await builder.keyboard.press('Enter');
  await builder.waitForURL(`${server.address}/?from=here`);
  await builder
    .getByRole('link', { name: /demonstration/i })
    .first()
    .click();
  await builder.getByRole('heading', { name: 'Who may look' }).waitFor();
});

let link: string;
test('a link is made with its consent beside it, shown once, and listed', async () => {
  expect(await main(builder)).toContain('That is plain http: whoever can listen');
  await builder.getByText('Make a link for those who live here').click();
  expect(await main(builder)).toContain('Readings tell when people are at home');
  await builder.getByLabel('For whom').fill('The <b>Millers</b>');
  await builder.getByLabel('They may').selectOption('See the results and add readings');
  expect(await builder.getByLabel('For so long').inputValue()).toBe('90');
  expect(await axeViolations(builder)).toEqual([]);
  await builder.getByRole('button', { name: 'Make the link' }).click();
  const shown = await builder.locator('.access-made code').first().textContent();
  link = `${server.address}${new URL(shown ?? '').pathname}`;
  await builder.getByText('The <b>Millers</b>: sees results, adds readings').waitFor();
  await builder.reload();
  await builder.getByRole('heading', { name: 'Who may look' }).waitFor();
  expect(await main(builder)).not.toContain(new URL(link).pathname);
});

test('the homeowner sees the house, its nights and readings, and not a link or button that leads nowhere', async () => {
  const refused: string[] = [];
  home.on('response', (it) => {
    if (it.status() >= 400) refused.push(it.url());
  });
  await home.goto(link, { waitUntil: 'networkidle' });
  expect(home.url()).toBe(`${server.address}/shared`);
  await home.getByRole('heading', { name: 'Readings', exact: true }).waitFor();
  expect(await main(home)).toMatch(/These readings tell when people are at home/);
  expect(await axeViolations(home)).toEqual([]);
  for (const address of await home
    .locator('a[href]')
    .evaluateAll((all) => all.map((it) => it.getAttribute('href'))))
    expect(address).toMatch(/^(\/shared|\/api\/shared\/|#)/);
  await home.locator('a[href^="/shared?night="]').first().click();
  await home.waitForURL(/\/shared\?night=/);
  expect((await home.request.get(`${server.address}/api/shared/first-page.html`)).status()).toBe(200);
  expect(refused).toEqual([]);
});

test('the homeowner adds a later export, sees what is new in it, and the house is worked out again', async () => {
  const later = later10(readFileSync(new URL('living.csv', sample), 'utf8').trimEnd().split(/\r?\n/));
  await home.getByLabel('Pick the files').setInputFiles([
    { name: 'living later.csv', mimeType: 'text/csv', buffer: Buffer.from(later.join('\n')) },
    { name: 'house.json', mimeType: 'application/json', buffer: Buffer.from('{}') },
  ]);
  await home.getByText('This is not taken as a logger’s file.').waitFor();
  await home
    .getByLabel('Pick the files')
    .setInputFiles([
      { name: 'living later.csv', mimeType: 'text/csv', buffer: Buffer.from(later.join('\n')) },
    ]);
  await home.getByText(/living later\.csv: \d+ new reading/).waitFor();
  await home.getByRole('button', { name: 'Add these readings' }).click();
  await home.getByText('The readings are added.').waitFor();
});

test('whoever has only a link, or has signed out, is led to sign in', async () => {
  await home.goto(`${server.address}/`);
  await home.getByRole('heading', { name: 'Sign in' }).waitFor();
  await builder.goto(`${server.address}/`);
  await builder.getByRole('button', { name: 'Sign out' }).click();
  await builder.getByRole('heading', { name: 'Sign in' }).waitFor();
  expect((await builder.request.get(`${server.address}/api/houses`)).status()).toBe(401);
  expect(complaints).toEqual([]);
});

/** The last rows of the sample's log, which ends at noon, and ten minutes' more each to ten to two. */
function later10(rows: readonly string[]): string[] {
  const day = /^\d{4}-\d\d-\d\d/.exec(rows.at(-1) ?? '')?.[0];
  const more = ['12:10', '12:20', '12:30', '12:40', '12:50', '13:00', '13:10', '13:20', '13:30', '13:40'];
  return [rows[0], ...rows.slice(-20), ...more.map((clock) => `${day}T${clock}:00,18.2,53.0`)];
}
