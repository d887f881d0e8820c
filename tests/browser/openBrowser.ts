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

/** Nothing in the background. */
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * Closing it fails when any page has asked for something beyond this machine.
 *
 * @throws Error with the remedy when there is no browser at all
 */
export async function openBrowser(): Promise<Browser> {
  const found = installed.find((path) => path !== undefined && existsSync(path));
  const executablePath = found ?? (await packagedBrowser());
  const browser = await chromium.launch({ executablePath, args: quiet });
  const beyond: string[] = [];
  browser.on('context', (context) =>
    context.on('request', (request) => {
      if (!OF_THIS_MACHINE.test(request.url())) beyond.push(request.url());
    }),
  );
  const close = browser.close.bind(browser);
  browser.close = async (options) => {
    await close(options);
    if (beyond.length > 0) throw new Error(`requests left the machine: ${beyond.join(', ')}`);
  };
  return browser;
}

const OF_THIS_MACHINE = /^(http:\/\/(127\.0\.0\.1|localhost)[:/]|data:|blob:|file:|about:)/;

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
