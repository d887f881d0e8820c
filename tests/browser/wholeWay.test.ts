/** The whole way of each person: the builder's, the homeowner's, and of one who has no pointer. */
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';
import { plainHouse } from './plainHouse.ts';

const { server, browser, end } = await atHand();
afterAll(end);
let page: Page;
beforeEach(async () => {
  page = await browser.newPage({ locale: 'en-GB', timezoneId: 'Europe/London' });
});
afterEach(() => page.close());

/** An assessment waits its turn where the machine has other work. */
const SOON = { timeout: 120_000 };
const main = () => page.getByRole('main');
const button = (name: string | RegExp) => page.getByRole('button', { name });
const one = (name: string) =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name, exact: true, level: 3 }) })
    .first();
/** Key by key, as a person does. */
async function type(label: string, text: string) {
  await page.getByLabel(label).click();
  await page.keyboard.type(text);
}
/** From the desk onto the page. */
async function drop(files: Readonly<Record<string, string>>) {
  const dataTransfer = await page.evaluateHandle((all) => {
    const held = new DataTransfer();
    for (const [name, text] of Object.entries(all)) held.items.add(new File([text], name));
    return held;
  }, files);
  await main().dispatchEvent('drop', { dataTransfer });
}
/** Figures are tied to their units by blanks that do not break. */
const answer = async () => (await page.locator('.answer').first().textContent())?.replace(/\s/g, ' ');
const text = (name: string) => String(plainHouse[name]);
const kept = (what: string) => page.getByText(`Kept: ${what}. The house is assessed again.`).waitFor(SOON);

test('a builder begins a house from files, corrects a guess, adds a stage and a build-up, and reads the gap', async () => {
  await page.goto(server.address);
  await page.getByRole('heading', { name: /Demonstration house/ }).waitFor();
  await drop({ 'attic office.csv': text('living.csv'), 'garden.csv': text('outside.csv') });
  await type('Its name', 'Plot 14, Orchard');
  await type('Floor area, m² (optional)', '96');
  await type('Heated volume, m³ (optional)', '240');
  expect(await page.getByLabel('The nearest town').inputValue()).toBe('London, United Kingdom');

  await one('attic office.csv')
    .getByText(/one every/)
    .waitFor(SOON);
  expect(await main().textContent()).toContain('Guessed from');
  await one('attic office.csv').getByLabel('Where it was').selectOption('Inside, in a room');
  await one('attic office.csv').getByLabel('Room').fill('Office');
  await one('garden.csv').getByLabel('Where it was').selectOption('Outside');
  await expect.poll(() => button('Keep this house').isEnabled(), SOON).toBe(true);
  expect(await axeViolations(page)).toEqual([]);
  await button('Keep this house').click();
  await page.getByRole('heading', { name: 'Plot 14, Orchard' }).waitFor(SOON);
  await page.getByRole('link', { name: 'Loggers' }).click();
  await expect.poll(() => main().textContent(), SOON).toContain('Office');

  await page.getByRole('link', { name: 'Stages' }).click();
  await page.getByText('Add a stage').click(SOON);
  await page.getByLabel('Its name').fill('After sealing');
  await page.getByLabel('From', { exact: true }).last().fill('2027-01-28T08:00');
  await page.getByLabel('To', { exact: true }).last().fill('2027-02-13T12:00');
  await button('Add this stage').click();
  await kept('“After sealing” added');

  await page.getByRole('link', { name: 'As drawn' }).click();
  await page.getByRole('link', { name: /build-ups/ }).click();
  await page.getByText('Add an element').click();
  await button('Add it').click();
  await page.getByLabel('Area, m²').fill('120');
  await button('Keep these changes').click();
  await page.getByText('The house is assessed again').waitFor(SOON);
  await page.getByRole('link', { name: 'All houses' }).click();
  await page.getByRole('link', { name: 'Plot 14, Orchard' }).click();
  await page
    .getByText(/the drawing says/)
    .first()
    .waitFor(SOON);
  await page.getByRole('link', { name: 'The gap' }).click();
  const whole = page.getByRole('img', { name: /^Heat loss of the whole house/ });
  await whole.waitFor();
  expect(await whole.getAttribute('aria-label')).toMatch(/Measured: .*W\/K/);
});

test('a homeowner adds a new export on a phone, reads last night, and can take it back', async () => {
  const living = text('living.csv');
  const id = await server.bring({
    ...plainHouse,
    'living.csv': living.slice(0, living.indexOf('2027-02-11T12:00:00')),
    'house.json': text('house.json').replace('Plain', 'Growing'),
  });
  await page.setViewportSize({ width: 360, height: 740 });
  // The morning after the last reading, by the reader's own clock.
  await page.clock.setFixedTime('2027-02-13T08:00:00Z');
  await page.goto(server.address);
  await page.getByRole('link', { name: 'Growing house (invented)' }).click();
  await expect.poll(answer, SOON).toMatch(/^In the night of 10 February it lost/);
  await page.getByRole('link', { name: 'Add readings' }).click();
  await page.getByRole('heading', { name: /Add readings to Growing house/ }).waitFor();
  await page
    .getByLabel('Or pick the files')
    .setInputFiles({ name: 'living.csv', mimeType: 'text/csv', buffer: Buffer.from(living) });
  await page.getByText(/It continues living\.csv: \d+ new readings, and no contradiction/).waitFor(SOON);
  expect(await axeViolations(page)).toEqual([]);
  await button('Add these readings').click(SOON);
  await page.waitForURL(`**/house/${id}`, SOON);
  await expect.poll(answer, SOON).toMatch(/^Last night it lost \d\.\d K in \d+ hours/);
  await button('Undo the last import').click(SOON);
  await button('Take it back').click();
  await page.getByText(/Taken back: living.*\.csv, brought on/).waitFor(SOON);
  await expect.poll(answer, SOON).toMatch(/^In the night of 10 February it lost/);
});

test('without a pointer: from the houses to the gap and back, and a night is put out by hand and in again', async () => {
  const id = await server.bring(plainHouse);
  const press = (key: string) => page.keyboard.press(key);
  const focused = () =>
    page.evaluate(() => {
      const { activeElement: it } = document;
      return (it?.getAttribute('aria-label') ?? it?.textContent ?? '').trim();
    });
  const tabTo = async (name: RegExp) => {
    for (let i = 0; i < 200; i++) {
      await press('Tab');
      if (name.test(await focused())) return;
    }
    throw new Error(`nothing like ${name} is reached by Tab`);
  };
  const decisions = async () => {
    const answer = await fetch(`${server.address}/api/houses/${id}`);
    return ((await answer.json()) as { house: { nights?: unknown } }).house.nights;
  };
  await page.goto(server.address);
  await page.getByRole('link', { name: 'Plain house (invented)' }).waitFor();
  await tabTo(/^Plain house \(invented\)$/);
  await press('Enter');
  await page.waitForURL(`**/house/${id}`);
  await tabTo(/^The gap$/);
  await press('Enter');
  await page.waitForURL(`**/house/${id}/gap`);
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await tabTo(/^The answer$/);
  await press('Enter');
  await page.waitForURL(`**/house/${id}`);

  await tabTo(/^Nights$/);
  await press('Enter');
  await page.waitForURL(`**/house/${id}/nights`);
  // The marks of the scatter stand there before the nights do, and have the same names.
  await page.getByRole('heading', { name: 'The night of 12 February' }).waitFor();
  await tabTo(/^Night of 12 February/);
  await press('ArrowLeft');
  expect(await focused()).toMatch(/^Night of 11 February/);
  await press('Enter');
  await page.getByRole('heading', { name: 'The night of 11 February' }).waitFor();
  await tabTo(/^Leave this night out by hand/);
  await press('Enter');
  await press('Tab');
  await press('Enter');
  await page.getByText('Give the reason: it stands in the result.').waitFor();
  await page.keyboard.type('a window stood open');
  await press('Enter');
  await page.getByText('Kept: the night of 11 February left out by hand').waitFor(SOON);
  await page.getByText('This result is hand-picked').waitFor();
  expect(await main().textContent()).toContain('Left out by hand: a window stood open.');
  expect(await decisions()).toEqual([{ date: '2027-02-11', used: false, why: 'a window stood open' }]);
  expect(await axeViolations(page)).toEqual([]);
  // The focus was left where the change is told.
  await press('Tab');
  expect(await focused()).toContain('Take this back');
  await press('Enter');
  await page.getByText('Taken back: the night of 11 February left out by hand').waitFor(SOON);
  expect(await main().textContent()).not.toContain('This result is hand-picked');
  expect(await decisions()).toBeUndefined();
  await tabTo(/^All houses$/);
  await press('Enter');
  await page.getByRole('heading', { name: 'Houses', level: 1 }).waitFor();
});
