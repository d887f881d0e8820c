/** What a browser test has at hand: the dashboard with the demonstration house assessed, and a browser to look at it. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { inject } from 'vitest';
import { openBrowser } from './openBrowser.ts';
import { type Stillwarm, startStillwarm } from './startStillwarm.ts';

export interface AtHand {
  /** A data folder of the test's own. */
  readonly data: string;
  readonly server: Stillwarm;
  readonly browser: Browser;
  /** The id of the demonstration house. */
  readonly demonstration: string;
  readonly end: () => Promise<void>;
}

export async function atHand(): Promise<AtHand> {
  const data = mkdtempSync(join(tmpdir(), 'stillwarm-browser-'));
  cpSync(inject('demonstrationData'), data, { recursive: true });
  const [server, browser] = await Promise.all([startStillwarm(data), openBrowser()]);
  return {
    data,
    server,
    browser,
    demonstration: await server.demonstration(),
    async end() {
      try {
        await browser.close();
      } finally {
        await server.stop();
        rmSync(data, { recursive: true, force: true });
      }
    },
  };
}
