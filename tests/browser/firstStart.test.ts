/** The very first look at the dashboard: the page is there before the demonstration house is. */
import { afterAll, expect, test } from 'vitest';
import { atHand } from './atHand.ts';

const { server, browser, end } = await atHand();
afterAll(end);

test('the demonstration house is said to be on its way, and comes with its answer without a reload', async () => {
  const page = await browser.newPage({ locale: 'en-GB' });
  let first = true;
  // As the very first answer is; how long it stays so depends on the machine.
  await page.route('**/api/houses', (route) => {
    if (!first) return route.continue();
    first = false;
    return route.fulfill({ json: { houses: [], demonstrationComing: true } });
  });
  await page.goto(`${server.address}/`);
  await page.getByText('The demonstration house is being made ready').waitFor();
  expect(await page.getByRole('button', { name: 'Bring the demonstration house back' }).count()).toBe(0);
  await page.getByText(/It loses between/).waitFor();
  expect(await page.getByText('The demonstration house is being made ready').count()).toBe(0);
});
