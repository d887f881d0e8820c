/** `npm run pictures`: the pictures of the README, from the demonstration house. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openBrowser } from './openBrowser.ts';
import { startStillwarm } from './startStillwarm.ts';

const out = 'web/pictures';
const sample = 'sample-logs';
mkdirSync(out, { recursive: true });
const data = mkdtempSync(join(tmpdir(), 'stillwarm-pictures-'));
const server = await startStillwarm(data);
const browser = await openBrowser();
try {
  const id = await server.demonstration();
  const desktop = await openPage(1100);
  await picture(desktop, `/house/${id}`, 'house');
  await desktop.goto(`${server.address}/house/${id}/build-up`, { waitUntil: 'networkidle' });
  await fromHeading(desktop, 'External walls', 'build-up');
  await desktop.goto(`${server.address}/bring`);
  const logs = readdirSync(sample).filter((name) => name.endsWith('.csv'));
  await desktop.getByLabel('Or pick the files').setInputFiles(logs.map((name) => join(sample, name)));
  await fromHeading(desktop, 'bedroom.csv', 'bring');
  await picture(await openPage(390), `/house/${id}/nights`, 'nights-phone');
} finally {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true });
}

async function openPage(width: number): Promise<Page> {
  const context = await browser.newContext({
    locale: 'en-GB',
    colorScheme: 'light',
    viewport: { width, height: 800 },
  });
  return context.newPage();
}

/** What is seen without scrolling. */
async function picture(page: Page, path: string, name: string): Promise<void> {
  await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
  await page.screenshot({ path: join(out, `${name}.png`) });
}

/** What is seen with a heading at the top. */
async function fromHeading(page: Page, heading: string, name: string): Promise<void> {
  const at = page.getByRole('heading', { name: heading });
  await at.waitFor();
  await at.evaluate((element) => element.scrollIntoView({ block: 'start' }));
  await page.screenshot({ path: join(out, `${name}.png`) });
}
