/** A night taken out with a reason and put back, and the readings read on, in a real browser by the keyboard alone. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { axeViolations } from './axeViolations.ts';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });
const LONG = { timeout: 180_000 };

let data: string;
let server: Stillwarm;
let browser: Browser;
let page: Page;
let house: string;

beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'stillwarm-nights-'));
  server = await startStillwarm(data);
  house = await server.demonstration();
  browser = await openBrowser();
  page = await browser.newPage({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  rmSync(data, { recursive: true, force: true });
});

const address = (path: string) => `${server.address}/house/${house}${path}`;
const main = () => page.getByRole('main');
const press = (key: string) => page.keyboard.press(key);
/** Goes on with Tab, as a person without a pointer does. */
async function tabTo(name: RegExp): Promise<void> {
  const focused = () =>
    page.evaluate(() => {
      const it = document.activeElement;
      return `${it?.getAttribute('aria-label') ?? ''} ${it?.textContent ?? ''}`;
    });
  for (let i = 0; i < 150; i++) {
    await press('Tab');
    if (name.test(await focused())) return;
  }
  throw new Error(`nothing like ${name} is reached by Tab`);
}
const decisions = async () => {
  const answer = await fetch(`${server.address}/api/houses/${house}`);
  return ((await answer.json()) as { house: { nights?: unknown } }).house.nights;
};

describe('the nights', () => {
  test('axe-core finds nothing on the page, with everything unfolded', async () => {
    await page.goto(address('/nights?night=2027-02-11'));
    await page.getByRole('heading', { name: 'The night of 11 February' }).waitFor();
    for (const summary of await page.locator('summary').all()) await summary.click();
    const tables = page.getByRole('button', { name: 'Show as table' });
    while ((await tables.count()) > 0) await tables.first().click();
    expect(await axeViolations(page)).toEqual([]);
  });

  test('the builder takes one out with a reason, by the keyboard alone, and the result says it is hand-picked', async () => {
    await page.goto(address('/nights?night=2027-02-11'));
    await page.getByRole('heading', { name: 'The night of 11 February' }).waitFor();
    await tabTo(/Leave this night out by hand/);
    await press('Enter');
    await press('Tab');
    await press('Enter');
    await page.getByText('Give the reason: it stands in the result.').waitFor();
    await page.keyboard.type('a window stood open');
    await press('Enter');
    await page.getByText('Kept: the night of 11 February left out by hand').waitFor(LONG);
    await page.getByText('This result is hand-picked').waitFor();
    expect(await main().textContent()).toContain('Left out by hand: a window stood open.');
    expect(await decisions()).toEqual([{ date: '2027-02-11', used: false, why: 'a window stood open' }]);
    expect(await axeViolations(page)).toEqual([]);
  });

  test('at once takes it back by the keyboard, and the house is what it was', async () => {
    // The focus was left where the change is told.
    await press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take this back');
    await press('Enter');
    await page.getByText('Taken back: the night of 11 February left out by hand').waitFor(LONG);
    expect(await main().textContent()).not.toContain('This result is hand-picked');
    expect(await decisions()).toBeUndefined();
  });

  test('a decision of another day is left to the rules again from the list of them', async () => {
    await fetch(`${server.address}/api/houses/${house}/nights/2027-02-10/decision`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ used: false, why: '=1+1' }),
    });
    await server.demonstration();
    await page.goto(address('/nights'));
    await page.getByRole('heading', { name: 'Nights decided by hand' }).waitFor();
    await page.getByRole('button', { name: /Leave it to the rules again, 10 February/ }).focus();
    await press('Enter');
    await page.getByText('Kept: the night of 10 February left out by hand no longer.').waitFor(LONG);
    expect(await decisions()).toBeUndefined();
  });

  test('the arrow keys walk the marks of the picture, and Enter opens a night', async () => {
    await page.goto(address('/nights'));
    await page.getByRole('heading', { name: 'How fast it cools' }).waitFor();
    const marks = page.getByRole('group', { name: /^Nights, by how much/ });
    await marks.locator('a[tabindex="0"]').focus();
    await press('Home');
    const name = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    const coldest = await name();
    await press('ArrowRight');
    expect(await name()).not.toBe(coldest);
    await press('Enter');
    await expect.poll(() => page.url()).toContain('night=2027-');
    expect(await marks.locator('a[aria-current="true"]').getAttribute('aria-label')).toMatch(/^Night of/);
  });
});

describe('the readings', () => {
  const spoken = () => page.locator('.readings-spoken').textContent();
  const chart = () => page.getByRole('application', { name: 'Temperature over time' });

  test('axe-core finds nothing on the page, with the stages being moved', async () => {
    await page.goto(address('/readings'));
    await chart().waitFor();
    for (const summary of await page.locator('summary').all()) await summary.click();
    await page.getByRole('slider', { name: /Before closing” ends/ }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });

  test('are read out one by one by the arrow keys', async () => {
    await page.goto(address('/readings'));
    await chart().focus();
    await press('ArrowRight');
    await expect.poll(spoken).toMatch(/Living room [\d.]+.* °C; Kitchen/);
    const before = await spoken();
    await press('ArrowRight');
    await expect.poll(spoken).not.toBe(before);
    await press('+');
    await press('Shift+ArrowRight');
    await expect.poll(spoken).toMatch(/ to /);
  });

  test('a stage is moved by its handle with the keyboard, and left as it was', async () => {
    await page.goto(address('/readings'));
    await page.getByText('Move the stages').focus();
    await press('Enter');
    const ends = page.getByRole('group', { name: 'Before closing' }).getByLabel('Ends');
    expect(await ends.inputValue()).toBe('2027-01-25T08:00');
    await page.getByRole('slider', { name: /Before closing” ends/ }).focus();
    await press('ArrowLeft');
    expect(await ends.inputValue()).toBe('2027-01-25T07:00');
    expect(await page.getByRole('button', { name: 'Keep these stages' }).isEnabled()).toBe(true);
    await page.getByRole('button', { name: 'As they were' }).click();
    expect(await ends.inputValue()).toBe('2027-01-25T08:00');
    expect(await page.getByRole('button', { name: 'Keep these stages' }).isEnabled()).toBe(false);
  });

  test('a note is added, numbered in the chart, and taken back', async () => {
    await page.goto(address('/readings'));
    await page.getByText('Note something').focus();
    await press('Enter');
    await page.getByLabel('When').fill('2027-02-01T21:00');
    await page.getByLabel('What').fill('Loft hatch open');
    await press('Enter');
    await page.getByText('Kept: the note “Loft hatch open”').waitFor(LONG);
    await expect.poll(() => page.locator('.readings-notes li').count()).toBe(4);
    await page.getByRole('button', { name: 'Take this back' }).click();
    await page.getByText('Taken back: the note “Loft hatch open”').waitFor(LONG);
    await expect.poll(() => page.locator('.readings-notes li').count()).toBe(3);
  });

  test('what is shown is taken along as CSV, PNG and SVG', async () => {
    await page.goto(address('/readings'));
    await chart().waitFor();
    for (const line of await page.getByRole('button', { name: 'Kitchen' }).all()) await line.click();
    const take = async (kind: string) => {
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: kind, exact: true }).click();
      const download = await coming;
      expect(download.suggestedFilename()).toBe(`readings 2027-01-09 to 2027-02-13.${kind.toLowerCase()}`);
      return readFileSync(await download.path());
    };
    const csv = (await take('CSV')).toString();
    expect(csv).toContain('Bedroom: Temperature (°C), least');
    expect(csv).not.toContain('Kitchen: Temperature');
    expect([...(await take('PNG')).subarray(1, 4)].map((it) => String.fromCharCode(it)).join('')).toBe('PNG');
    expect((await take('SVG')).toString()).toMatch(/^<svg xmlns=[\s\S]*Living room[\s\S]*<\/svg>\n$/);
  });
});
