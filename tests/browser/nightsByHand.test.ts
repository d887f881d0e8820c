/** The nights and the readings in a real browser by the keyboard: decisions, marks, notes, what is taken along. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';
import { plainHouse } from './plainHouse.ts';

const LONG = { timeout: 180_000 };

const { server, browser, demonstration: house, end } = await atHand();
afterAll(end);
/** What is changed is changed on this one. */
const plain = await server.bring(plainHouse);
let page: Page;
beforeAll(async () => {
  page = await browser.newPage({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
});

const address = (path: string, of = house) => `${server.address}/house/${of}${path}`;
const press = (key: string) => page.keyboard.press(key);
const decisions = async () => {
  const answer = await fetch(`${server.address}/api/houses/${plain}`);
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

  test('a decision of another day is left to the rules again from the list of them', async () => {
    await fetch(`${server.address}/api/houses/${plain}/nights/2027-02-10/decision`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ used: false, why: '=1+1' }),
    });
    await server.assessed(plain);
    await page.goto(address('/nights', plain));
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

  test('a stage’s border is dragged on the chart to a full hour, and kept', async () => {
    const stored = async () => {
      const answer = await fetch(`${server.address}/api/houses/${plain}`);
      const { house: it } = (await answer.json()) as { house: { stages: { name: string; to: string }[] } };
      return it.stages.find(({ name }) => name === 'Before closing')?.to;
    };
    await page.goto(address('/readings', plain));
    await page.getByText('Move the stages').click();
    const ends = page.getByRole('group', { name: 'Before closing' }).getByLabel('Ends');
    const before = await ends.inputValue();
    const handle = page.getByRole('slider', { name: /Before closing” ends/ });
    await handle.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await handle.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x - 60, y + height / 2, { steps: 4 });
    await page.mouse.up();
    const after = await ends.inputValue();
    expect([after < before, after.slice(-3)]).toEqual([true, ':00']);
    await page.getByRole('button', { name: 'Keep these stages' }).click();
    await page.getByText('Kept: “Before closing” moved').waitFor(LONG);
    expect(await stored()).toBe(after);
  });

  test('a note is added, numbered in the chart, and taken back', async () => {
    await page.goto(address('/readings', plain));
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
