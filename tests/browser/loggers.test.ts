/** Humidity, loggers and the next test in a real browser; a plug meter's reading is kept, changes the result, is undone. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { houseFolder } from '../server/inventedHouse.ts';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';

const sample = fileURLToPath(new URL('../../sample-logs', import.meta.url));
const PHONE = { width: 360, height: 740 };
const DESKTOP = { width: 1280, height: 900 };
const PAGES = ['/humidity', '/loggers', '/test'];
const { server, browser, demonstration, end } = await atHand();
afterAll(end);
let page: Page;
beforeEach(async () => {
  await page?.close();
  page = await browser.newPage({ locale: 'en-GB', viewport: DESKTOP });
  page.on('pageerror', (error) => {
    throw error;
  });
});

/** Until what it shows has come. */
async function open(house: string, path: string) {
  await page.goto(`${server.address}/house/${house}${path}`);
  await page.locator('main').waitFor({ timeout: 60_000 });
  await expect.poll(main, { timeout: 60_000 }).toMatch(/^(?!.*Loading).+/s);
}
/** Its text as it is read: figures are tied to their units by blanks that do not break. */
const textOf = async (selector: string) =>
  (await page.locator(selector).textContent())?.replaceAll('\u00a0', ' ');
const main = () => textOf('main');
const field = (label: string) => page.getByLabel(label, { exact: true });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const wider = () =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** The demonstration house as if its heaters had had no logger. */
function withoutHeatLog() {
  const { heat: _, ...house } = JSON.parse(readFileSync(join(sample, 'house.json'), 'utf8'));
  const logs = readdirSync(sample).filter((name) => name.endsWith('.csv') && name !== 'heater.csv');
  return {
    ...Object.fromEntries(logs.map((name) => [name, new Uint8Array(readFileSync(join(sample, name)))])),
    'house.json': JSON.stringify({ ...house, name: 'House without a heat log' }),
  };
}
/** COMPUTED: the sum of the sample's heater.csv from 17:00 to 23:00 on 4 February [kWh]. */
const HEATED = 18;

test('axe-core finds nothing, and no page is wider than a phone', async () => {
  for (const path of PAGES)
    for (const viewport of [DESKTOP, PHONE]) {
      await page.setViewportSize(viewport);
      await open(demonstration, path);
      expect(await axeViolations(page), path).toEqual([]);
      expect(await wider(), path).toBeLessThanOrEqual(0);
    }
});

test('every link, button and field is reached by the keyboard', async () => {
  for (const path of PAGES) {
    await open(demonstration, path);
    const kinds = 'a[href], button:not(:disabled), input, select, [tabindex="0"]';
    const wanted = await page.evaluate(
      (all) =>
        [...document.querySelectorAll<HTMLElement>(all)].filter((it) => it.offsetParent !== null).length,
      kinds,
    );
    const reached = new Set<number>();
    // A field for a date has a stop for each of its parts.
    for (let i = 0; i < wanted + 40; i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(
        (all) => [...document.querySelectorAll(all)].indexOf(document.activeElement ?? document.body),
        kinds,
      );
      if (at >= 0) reached.add(at);
    }
    expect(reached.size, path).toBeGreaterThanOrEqual(wanted);
  }
});

test('humidity is shown with what follows from it, and its table night by night', async () => {
  await open(demonstration, '/humidity');
  await expect.poll(main, { timeout: 60_000 }).toMatch(/held \d\.\d g of water/);
  expect(await page.getByRole('heading', { level: 3 }).allTextContents()).toEqual([
    'Temperature [°C]',
    'Relative humidity [%]',
    'Dew point [°C]',
    'Absolute humidity [g/m³]',
    'Vapour over outdoors [g/m³]',
  ]);
  await button('Show as table').click();
  await field('Logger').selectOption({ label: 'Bedroom' });
  await expect.poll(main).toMatch(/Bedroom: means from sunset to sunrise/);
  const plot = page.getByRole('application', { name: 'Dew point over time' });
  await plot.focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => page.locator('.readings-spoken').textContent()).toMatch(/Living room .*°C/);
  await page.keyboard.press('+');
  await expect.poll(() => button('Whole record').isEnabled()).toBe(true);
});

test('a house without humidity is told kindly what logging it would tell', async () => {
  const dry = await server.bring(houseFolder);
  await open(dry, '/humidity');
  await expect
    .poll(main, { timeout: 60_000 })
    .toMatch(/No humidity was logged in this house, and that is all right/);
});

test('the hours in which the loggers lay side by side are given on the page, and taken out', async () => {
  const house = await server.bring({
    ...houseFolder,
    'house.json': houseFolder['house.json'].replace('Test', 'Side'),
  });
  await open(house, '/loggers');
  await field('Side by side from').fill('2027-01-10T17:00');
  await field('Until').fill('2027-01-10T13:00');
  await button('Keep these hours').click();
  expect(await field('Until').getAttribute('aria-invalid')).toBe('true');
  await field('Until').fill('2027-01-10T21:00');
  await button('Keep these hours').click();
  await page.getByText(/These lay side by side from 10 January 2027, 17:00/).waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Kept/);
  await button('Take these hours out').click();
  await page.getByText('Taken out.').waitFor();
  await expect.poll(main).not.toMatch(/These lay side by side/);
});

test('a plug meter’s reading makes the heated night known, and is undone', async () => {
  const house = await server.bring(withoutHeatLog());
  await open(house, '/test');
  await page.getByText('No heat is known so far').waitFor({ timeout: 120_000 });
  await button('Add this reading').click();
  expect(await field('Heaters on').getAttribute('aria-invalid')).toBe('true');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('type')))
    .toBe('datetime-local');
  await field('Heaters on').fill('2027-02-04T17:00');
  await field('Heaters off').fill('2027-02-04T23:00');
  await field('Count before, kWh').fill('812,4');
  await field('Count after, kWh').fill(String(812.4 + HEATED));
  await button('Add this reading').focus();
  await page.keyboard.press('Enter');
  await page.getByText('Kept. The house is assessed again.').waitFor();
  await page.getByText('The heat of a heated night is known').waitFor({ timeout: 120_000 });
  expect(await main()).toMatch(/4 February 2027, 17:00/);
  expect(await axeViolations(page)).toEqual([]);
  await button('Undo').click();
  await page.getByText('Undone.').waitFor();
  await page.getByText('No heat is known so far').waitFor({ timeout: 120_000 });
  expect(await main()).not.toMatch(/4 February 2027, 17:00/);
});

test('the plan tells the hours of this house’s sunset, and another day has others', async () => {
  await open(demonstration, '/test');
  await field('On the day of').fill('2027-01-20');
  await expect.poll(() => textOf('.plan-hours')).toMatch(/20 Jan \d\d:\d\d/);
  await field('On the day of').fill('2027-03-20');
  await expect.poll(() => textOf('.plan-hours')).toMatch(/20 Mar 19:/);
  expect(await main()).toMatch(/never an unflued flame/);
  expect(await main()).toMatch(/Local codes, the insurer/);
});
