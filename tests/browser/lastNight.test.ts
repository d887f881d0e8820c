/** A homeowner reads last night beside its drawing, and several houses side by side. */
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import type { HousesAnswer } from '../../server/api/shapes.ts';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';

const PHONE = { width: 360, height: 740 };
const DAY = 86_400_000; // [ms]

const { server, browser, demonstration: id, end } = await atHand();
afterAll(end);

async function opened(
  path: string,
  viewport = PHONE,
  prepare?: (page: Page) => Promise<void>,
): Promise<Page> {
  const context = await browser.newContext({ locale: 'en-GB', viewport });
  const page = await context.newPage();
  await prepare?.(page);
  await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
  return page;
}

const tooWide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('the page of a house on a phone', () => {
  test('says first what the night was, and what the house as drawn would have done in it', async () => {
    const page = await opened(`/house/${id}`);
    const answer = page.locator('.answer');
    await expect
      .poll(async () => (await answer.textContent())?.replace(/\s/g, ' '))
      .toMatch(
        /^In the night of 12 February it lost 1\.\d K in 9 hours.* while it was \d\.\d °C outside\. Built as drawn it would have lost \d\.\d to \d\.\d K\.$/,
      );
    await page.context().close();
  });

  test('shows that night with the range of the drawing, heard as a sentence and read as a table', async () => {
    const page = await opened(`/house/${id}`);
    await page.getByRole('img', { name: /^Inside lost 1\.\d K; as drawn \d\.\d to \d\.\d K\.$/ }).waitFor();
    const night = page.getByRole('region', { name: 'The night of 12 February' });
    await night.getByRole('button', { name: 'Show as table' }).click();
    await night.getByRole('columnheader', { name: 'As drawn, 95 %' }).waitFor();
    expect(await night.getByRole('cell', { name: /^1\d\.\d to 1\d\.\d °C$/ }).count()).toBeGreaterThan(10);
    await page.context().close();
  });

  test('needs no sideways scrolling, and axe-core finds nothing', async () => {
    const page = await opened(`/house/${id}`);
    await page.getByRole('img', { name: /^Inside lost/ }).waitFor();
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
    expect(await axeViolations(page)).toEqual([]);
    await page.context().close();
  });
});

describe('the list of houses', () => {
  /** The demonstration house's answer under other names, as if others had been brought. */
  const withOthers = async (page: Page) => {
    const { houses }: HousesAnswer = await (await fetch(`${server.address}/api/houses`)).json();
    const others = Array.from({ length: 20 }, (_, i) => ({
      ...houses[0],
      id: `house-${i}`,
      name: `Orchard, plot ${i + 1}`,
      invented: false,
      lastReading: new Date(Date.now() - (i + 0.5) * DAY).toISOString(),
    }));
    await page.route('**/api/houses', (route) =>
      route.fulfill({ json: { houses: [...houses, ...others], demonstrationComing: false } }),
    );
  };

  test('sets those that were brought side by side on one ruler, and leaves the invented one out', async () => {
    const page = await opened('/', PHONE, withOthers);
    const ruler = page.getByRole('img', { name: /^Measured over drawn\. / });
    await ruler.waitFor();
    const heard = (await ruler.getAttribute('aria-label')) ?? '';
    expect(heard.match(/Orchard, plot \d+:/g)).toHaveLength(20);
    expect(heard).not.toContain('invented');
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
    expect(await axeViolations(page)).toEqual([]);
    await page.context().close();
  });

  test('tells how fresh each house’s readings are by the reader’s own clock', async () => {
    const page = await opened('/', PHONE, withOthers);
    await page.getByText('Last reading 12 hours ago.').waitFor();
    await page.getByText('Last reading 3 days ago.').waitFor();
    // Of the demonstration house, whose readings lie ahead of any clock of 2026, the day itself.
    expect(await page.getByRole('main').textContent()).toContain('Last reading 13 February 2027');
    await page.context().close();
  });

  test('does not move what is above the houses when they come', async () => {
    const context = await browser.newContext({ locale: 'en-GB', viewport: PHONE });
    const page = await context.newPage();
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/api/houses', async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(server.address);
    const link = page.getByRole('link', { name: 'Bring a house' });
    const before = await link.boundingBox();
    release();
    await page.getByRole('link', { name: /Demonstration house/ }).waitFor();
    expect(await link.boundingBox()).toEqual(before);
    await context.close();
  });
});
