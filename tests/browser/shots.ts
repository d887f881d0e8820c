/** `npm run pictures`: every page of the demonstration house at phone and desktop width, for looking at and for the README. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBrowser } from './openBrowser.ts';
import { startStillwarm } from './startStillwarm.ts';

const out = process.argv[2] ?? 'web/pictures';
const widths = { phone: 360, desktop: 1440 } as const;
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
    stages: `/house/${id}/stages`,
    bring: '/bring',
  };
  for (const [device, width] of Object.entries(widths))
    for (const colorScheme of ['light', 'dark'] as const) {
      const context = await browser.newContext({
        locale: 'en-GB',
        colorScheme,
        viewport: { width, height: 900 },
      });
      const page = await context.newPage();
      for (const [name, path] of Object.entries(pages)) {
        await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
        await page.screenshot({ path: join(out, `${name}-${device}-${colorScheme}.png`), fullPage: true });
      }
      await context.close();
    }
} finally {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true });
}
