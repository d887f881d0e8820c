/** A real browser for the tests: one that is installed, else the one that comes as an npm package. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const installed = [
  process.env.STILLWARM_BROWSER,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/microsoft-edge',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
];

/** Nothing in the background: the tests assert that no request leaves the machine. */
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** @throws Error with the remedy when there is no browser at all */
export async function openBrowser(): Promise<Browser> {
  const found = installed.find((path) => path !== undefined && existsSync(path));
  const executablePath = found ?? (await packagedBrowser());
  return chromium.launch({ executablePath, args: quiet });
}

async function packagedBrowser(): Promise<string> {
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    return await packaged.executablePath();
  } catch (error) {
    throw new Error(
      'No browser for the browser tests. Install Chromium or Chrome, or name one in STILLWARM_BROWSER.',
      { cause: error },
    );
  }
}
