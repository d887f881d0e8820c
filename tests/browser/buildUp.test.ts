/** The design changed in a real browser: a layer edited by the keyboard, undone, kept, and assessed again. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';

const { server, browser, demonstration: house, end } = await atHand();
afterAll(end);
let page: Page;
beforeAll(async () => {
  page = await browser.newPage({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
});

const address = (path: string) => `${server.address}/house/${house}${path}`;
const main = () => page.getByRole('main');
const uValue = () => page.locator('.buildup-figure strong').first().textContent();
const layers = () => page.locator('.layers-name').allTextContents();
const thickness = () => page.getByLabel('Thickness, mm');
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

/** Picks the wool of the walls, from wherever the page is, with keys alone. */
async function pickWool() {
  await button('External walls').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /Plaster/ }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.getByRole('heading', { name: 'Layer 3: Mineral wool' }).waitFor();
}

test('the page is linked from the house as drawn, and axe-core finds nothing on it', async () => {
  await page.goto(address('/design'), { waitUntil: 'networkidle' });
  await page.getByRole('link', { name: 'Change the build-ups' }).click();
  await page.getByRole('heading', { name: 'The house, cut through' }).waitFor();
  for (const summary of await page.locator('summary').all()) await summary.click();
  expect(await axeViolations(page)).toEqual([]);
});

test('an element whose layers give no U-value has no share in the cut, and not 0 %', async () => {
  await button('Ceiling').click();
  await page.getByRole('button', { name: /2 ?Mineral wool 100/ }).click();
  const conductivities = page.getByLabel('Conductivity, W/(mK)');
  await conductivities.nth(1).fill('50');
  await page.getByText('No U-value can be given').waitFor();
  const shares = page.locator('.section text').filter({ hasText: 'Ceiling' }).locator('.section-share');
  await expect.poll(() => shares.textContent()).toBe('—');
  await button('Undo').click();
  await expect.poll(() => shares.textContent()).toMatch(/%/);
});

test('an element is picked in the cut through the house', async () => {
  await page.locator('.section-ceiling').first().click();
  await page.getByRole('heading', { name: 'Ceiling', exact: true }).waitFor();
  expect(await layers()).toContain('Mineral wool over the joists');
});

test('a thickness typed changes the U-value at once, and undo in the field brings both back', async () => {
  await pickWool();
  const before = await uValue();
  await thickness().focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('70');
  await expect.poll(uValue).not.toBe(before);
  await page.keyboard.press('Control+Z');
  await expect.poll(uValue).toBe(before);
  expect(await thickness().inputValue()).toBe('140');
  await page.keyboard.press('Control+Shift+Z');
  expect(await thickness().inputValue()).toBe('70');
  await page.keyboard.press('Control+Z');
});

test('what cannot be is told at the field, and nothing else is lost', async () => {
  const before = await uValue();
  await thickness().fill('0');
  expect(await main().textContent()).toMatch(/Give a number above 0\. Worked out with 140 as yet/);
  expect(await thickness().getAttribute('aria-invalid')).toBe('true');
  expect(await uValue()).toBe(before);
  await thickness().fill('140');
  expect(await thickness().getAttribute('aria-invalid')).toBeNull();
});

test('Alt and an arrow key move a layer, and the keyboard stays on it', async () => {
  const before = await layers();
  await page.getByRole('button', { name: /Mineral wool/ }).focus();
  await page.keyboard.press('Alt+ArrowLeft');
  await expect.poll(layers).toEqual([before[0], before[2], before[1], before[3]]);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/^2Mineral wool/);
  await button('Undo').click();
  await expect.poll(layers).toEqual(before);
});

test('up and down on a layer of the drawing make it thicker and thinner, as one edit', async () => {
  await pickWool();
  await page.getByRole('button', { name: /Mineral wool/ }).focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => thickness().inputValue()).toBe('150');
  await page.keyboard.press('Control+Z');
  await expect.poll(() => thickness().inputValue()).toBe('140');
});

test('leaving with changes that are not kept asks first, and staying keeps them', async () => {
  await pickWool();
  await thickness().fill('100');
  const asked: string[] = [];
  page.once('dialog', (dialog) => {
    asked.push(dialog.message());
    dialog.dismiss();
  });
  await page.getByRole('link', { name: 'Nights' }).click();
  expect(page.url()).toBe(address('/build-up'));
  page.once('dialog', (dialog) => {
    asked.push(dialog.message());
    dialog.dismiss();
  });
  await page.evaluate(() => history.back());
  await expect.poll(() => asked.length).toBe(2);
  expect(new Set(asked)).toEqual(new Set(['Your changes to the build-ups are not kept yet. Leave them?']));
  await expect.poll(() => page.url()).toBe(address('/build-up'));
  expect(await thickness().inputValue()).toBe('100');
});

test('what is kept is the design of the house after a reload, and the house is assessed again with it', async () => {
  const cells = () =>
    page
      .getByRole('row', { name: /^External walls/ })
      .getByRole('cell')
      .allTextContents();
  await page.goto(address('/design'), { waitUntil: 'networkidle' });
  const [, , lossBefore] = await cells();
  expect(lossBefore).toMatch(/W\/K/);
  await page.goto(address('/build-up'), { waitUntil: 'networkidle' });
  await pickWool();
  await thickness().focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('100');
  const [loss, kept, , transmittance] = await cells();
  expect(kept).toBe(lossBefore);
  expect(loss).not.toBe(lossBefore);
  const other = await browser.newPage({ locale: 'en-GB' });
  await other.goto(address('/build-up'), { waitUntil: 'networkidle' });
  await button('Keep these changes').click();
  await page.getByText('The house is assessed again').waitFor({ timeout: 60_000 });
  await page.getByRole('link', { name: 'see it as drawn' }).click();
  const assessed = async () => (await cells()).slice(1, 3);
  await expect.poll(assessed, { timeout: 120_000 }).toEqual([transmittance, loss]);
  await page.reload({ waitUntil: 'networkidle' });
  await expect.poll(assessed).toEqual([transmittance, loss]);

  // A page that was open meanwhile does not write over what was kept.
  await other.getByLabel('Area, m²').fill('1');
  await other.getByRole('button', { name: 'Keep these changes' }).click();
  await other.getByText('was changed elsewhere').waitFor();
  expect(await assessed()).toEqual([transmittance, loss]);
});
