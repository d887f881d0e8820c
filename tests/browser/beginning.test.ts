/** A house begun from its loggers' files in a real browser: guesses seen and changed, kept, added to, and taken back. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';
import { plainHouse } from './plainHouse.ts';

const sample = fileURLToPath(new URL('../../sample-logs', import.meta.url));
const { server, browser, end } = await atHand();
afterAll(end);
let page: Page;
beforeEach(async () => {
  page = await browser.newPage({ locale: 'en-GB', timezoneId: 'Europe/London' });
});
afterEach(() => page.close());

const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
const sampleFile = (name: string, change: (text: string) => string = (text) => text) =>
  file(name, change(readFileSync(join(sample, name), 'utf8')));
const csvs = () =>
  readdirSync(sample)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => sampleFile(name));
/** A day of one logger, every ten minutes, written so that day and month can be taken for each other. */
const day = (head: string, ...values: readonly number[]) =>
  [
    head,
    ...Array.from({ length: 144 }, (_, i) => {
      const clock = `${String(Math.floor(i / 6)).padStart(2, '0')}:${(i % 6) * 10}`.replace(/:0$/, ':00');
      return [`03/04/2027 ${clock}`, ...values.map((value) => (value + Math.sin(i / 20)).toFixed(2))].join(
        ',',
      );
    }),
  ].join('\n');

const main = () => page.getByRole('main').textContent();
const one = (name: string) =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name, exact: true, level: 3 }) })
    .first();
const button = (name: string) => page.getByRole('button', { name });

async function bring(files: readonly ReturnType<typeof file>[], path = '/bring') {
  await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
  await page.getByLabel('Or pick the files').setInputFiles([...files]);
  await page.getByRole('heading', { name: 'The files' }).waitFor({ timeout: 60_000 });
}

async function keep(name = 'Keep this house') {
  await button(name).click({ timeout: 120_000 }); // waits until it may be
  await page.waitForURL(/\/house\//, { timeout: 60_000 });
}

describe('from the loggers’ files alone', () => {
  test('the page is no wider than a phone', async () => {
    await page.setViewportSize({ width: 360, height: 800 });
    await bring([sampleFile('living.csv'), sampleFile('weather.csv')]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });

  test('a date that may be read both ways is asked, and the answer moves the readings at once', async () => {
    await bring([file('hall.csv', day('Date,Temperature (°C)', 18))]);
    const question = page.getByRole('group', { name: /hall\.csv: Which comes first/ });
    await question.waitFor();
    await question.getByLabel('The month: 03/04 is 4 March').check();
    await one('hall.csv')
      .getByText(/First 4 March 2027/)
      .waitFor({ timeout: 30_000 });
    await question.getByLabel('The day: 03/04 is 3 April').check();
    await one('hall.csv')
      .getByText(/First 3 April 2027/)
      .waitFor({ timeout: 30_000 });
    expect(await question.getByLabel('The day: 03/04 is 3 April').isChecked()).toBe(true);
  });

  test('a column that was not read becomes a logger when it is said to hold a temperature', async () => {
    await bring([file('both.csv', day('Date,Temperature (°C),Probe', 18, 7))]);
    const probe = page.getByLabel('What “Probe” holds');
    expect(await probe.inputValue()).toBe('');
    await probe.focus();
    await probe.selectOption('temperature');
    await page.getByLabel('Where “Probe” was').selectOption('outside');
    await probe.focus();
    await one('both.csv').getByText('How it was read').click();
    await one('both.csv')
      .getByText(/“Probe”: temperature from 6\.0 to 8\.0 °C/)
      .waitFor({ timeout: 30_000 });
  });

  test('what is typed while the files are read again stays, and so does the place in the page', async () => {
    await bring([file('hall.csv', day('Date,Temperature (°C)', 18))]);
    const offset = one('hall.csv').getByLabel('Minutes to add to its clock');
    await one('hall.csv').getByText('How it was read').click();
    await offset.pressSequentially('60', { delay: 300 });
    await one('hall.csv')
      .getByText(/First 3 April 2027, 01:00/)
      .waitFor({ timeout: 30_000 });
    expect(await offset.inputValue()).toBe('60');
    expect(await offset.evaluate((field) => field === document.activeElement)).toBe(true);
  });

  test('what cannot be is told at its field once it is left', async () => {
    await bring([file('hall.csv', day('Date,Temperature (°C)', 18))]);
    const area = page.getByLabel('Floor area');
    await area.fill('large');
    await area.blur();
    await page.getByText('Give square metres, a number above zero, or nothing.').first().waitFor();
    expect(await area.getAttribute('aria-invalid')).toBe('true');
  });
});

describe('lines that are pasted', () => {
  /** As the clipboard has them, on the page itself or where the cursor is. */
  const paste = (given: { readonly text?: string; readonly file?: string }) =>
    page.evaluate(({ text, file }) => {
      const clipboardData = new DataTransfer();
      if (text !== undefined) clipboardData.setData('text/plain', text);
      if (file !== undefined) clipboardData.items.add(new File([file], 'porch.csv', { type: 'text/csv' }));
      const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
      document.activeElement?.dispatchEvent(event);
    }, given);
  const lines = day('Date,Temperature (°C)', 18);

  test('on the page wait for a name, and come in under it as a file does', async () => {
    await page.goto(`${server.address}/bring`, { waitUntil: 'networkidle' });
    await paste({ text: lines });
    const name = page.getByLabel('What to call it');
    await expect.poll(() => name.evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.type('Back/kitchen');
    await page.keyboard.press('Enter');
    await one('Back kitchen.csv')
      .getByText(/144 rows/)
      .first()
      .waitFor({ timeout: 60_000 });
    await paste({ file: lines.replace('18', '7') });
    await one('porch.csv').waitFor({ timeout: 60_000 });
  });

  test('come in by their own field on a phone, onto a house that is stored', async () => {
    await page.setViewportSize({ width: 360, height: 740 });
    const house = await server.bring(plainHouse);
    await page.goto(`${server.address}/bring?onto=${house}`, { waitUntil: 'networkidle' });
    await page.getByText('Or paste the lines of a log').click();
    await button('Take these lines in').click();
    await page.getByText('Paste at least the heading and one line of readings.').waitFor();
    await page.getByLabel('The lines').fill(lines.replaceAll(',', '\t'));
    expect(await axeViolations(page)).toEqual([]);
    await button('Take these lines in').click();
    await one('Pasted log.csv')
      .getByText(/144 rows/)
      .first()
      .waitFor({ timeout: 60_000 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});

describe('a house.json that is brought', () => {
  test('is opened in the form, and what the form does not know stays in it', async () => {
    await bring([...csvs(), sampleFile('house.json', (text) => text.replace('Demonstration', 'Another'))]);
    expect(await page.getByLabel('Its name').inputValue()).toBe('Another house (invented)');
    expect(await one('living.csv').getByLabel('Room').inputValue()).toBe('Living room');
    await page.getByLabel('Its name').fill('Renamed house');
    await keep();
    const id = new URL(page.url()).pathname.split('/')[2];
    const { house } = await (await page.request.get(`${server.address}/api/houses/${id}`)).json();
    const brought = JSON.parse(readFileSync(join(sample, 'house.json'), 'utf8'));
    expect(house).toEqual({ ...brought, name: 'Renamed house' });
  });

  test('of which no form can be made is told, and a new one can be begun from the files', async () => {
    await page.goto(`${server.address}/bring`, { waitUntil: 'networkidle' });
    await page
      .getByLabel('Or pick the files')
      .setInputFiles([sampleFile('living.csv'), file('house.json', '{ "name": ')]);
    await page.getByRole('heading', { name: 'house.json cannot be read' }).waitFor();
    await button('Begin a new one from the files').click();
    await page.getByLabel('Its name').waitFor();
    expect(await one('living.csv').getByLabel('Where it was').inputValue()).toBe('inside');
  });
});

describe('a house that is stored', () => {
  let path: string;
  beforeAll(async () => {
    path = `/bring?onto=${await server.bring(plainHouse)}`;
  });

  test('shows where an export contradicts it, and lets the person choose which is believed', async () => {
    const other = sampleFile('living.csv', (text) =>
      text.replace('2027-01-20T12:00:00,', '2027-01-20T12:00:00,1'),
    );
    await bring([other], path);
    await page
      .getByText('1 instant has another value in it than in what is stored:')
      .waitFor({ timeout: 60_000 });
    const believed = page.getByRole('group', { name: 'Which is believed where they differ?' });
    expect(await believed.getByLabel('What is stored, living.csv').isChecked()).toBe(true);
    await believed.getByLabel(/What is brought/).check();
    expect(await believed.getByLabel(/What is brought/).isChecked()).toBe(true);
  });

  test('is not changed by the very same file', async () => {
    await bring([sampleFile('outside.csv')], path);
    await page.getByText(/The very same file is stored already/).waitFor({ timeout: 60_000 });
    expect(await main()).toContain('Nothing of this is new');
    expect(await button('Add these readings').isEnabled()).toBe(false);
  });
});
