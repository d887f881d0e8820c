/**
 * `npm run shots -- FOLDER`: every page of the demonstration house at phone and desktop width and as it is printed, for
 * looking at. Says what the browser complains of, and which page is wider than its screen.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openBrowser } from './openBrowser.ts';
import { startStillwarm } from './startStillwarm.ts';

const out = process.argv[2] ?? join(tmpdir(), 'stillwarm-shots');
const widths = { phone: 360, desktop: 1440 } as const;
/** What A4 has between its margins [px]. */
const PAPER = 680;
mkdirSync(out, { recursive: true });
const data = mkdtempSync(join(tmpdir(), 'stillwarm-pictures-'));
const server = await startStillwarm(data);
const browser = await openBrowser();
try {
  const id = await server.demonstration();
  const pages = {
    houses: '/',
    house: `/house/${id}`,
    readings: `/house/${id}/readings`,
    nights: `/house/${id}/nights`,
    design: `/house/${id}/design`,
    'build-up': `/house/${id}/build-up`,
    stages: `/house/${id}/stages`,
    gap: `/house/${id}/gap`,
    humidity: `/house/${id}/humidity`,
    loggers: `/house/${id}/loggers`,
    'next-test': `/house/${id}/test`,
    bring: '/bring',
  };
  for (const [device, width] of Object.entries(widths))
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await openPage(colorScheme, width);
      for (const [name, path] of Object.entries(pages)) {
        await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
        await complainOfWidth(page);
        await page.screenshot({ path: join(out, `${name}-${device}-${colorScheme}.png`), fullPage: true });
      }
      await page.context().close();
    }
  // From the dark theme and a wide screen, the furthest from paper.
  const page = await openPage('dark', widths.desktop);
  for (const [name, path] of Object.entries(pages)) {
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: widths.desktop, height: 900 });
    await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
    await page.pdf({ path: join(out, `${name}.pdf`), preferCSSPageSize: true, format: 'A4' });
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: PAPER, height: 900 });
    await page.screenshot({ path: join(out, `${name}-print.png`), fullPage: true });
  }
} finally {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true });
}

async function openPage(colorScheme: 'light' | 'dark', width: number): Promise<Page> {
  const context = await browser.newContext({
    locale: 'en-GB',
    colorScheme,
    viewport: { width, height: 900 },
  });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error') console.error(`${page.url()} at ${width} px: ${message.text()}`);
  });
  page.on('pageerror', (error) => console.error(`${page.url()} at ${width} px: ${error.message}`));
  return page;
}

async function complainOfWidth(page: Page): Promise<void> {
  const width = page.viewportSize()?.width ?? 0;
  const needed = await page.evaluate(() => document.documentElement.scrollWidth);
  if (needed > width) console.error(`${page.url()} needs ${needed} px of ${width}`);
}
