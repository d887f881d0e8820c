/** The sheet as a person has it: a file on a disk, on a phone, without a network, and on paper. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { firstPageHtml, type SheetInput, sheetHtml } from '../../src/sheet/index.ts';
import { figures } from '../../src/words/index.ts';
import { inputOfFolder, inventedInput, sampleFolder, withNights, withStages } from '../sheet/inputs.ts';
import { axeViolations } from './axeViolations.ts';
import { openBrowser } from './openBrowser.ts';

const PHONE = 360; // [px]
const folder = mkdtempSync(join(tmpdir(), 'stillwarm-sheet-'));
const asked: string[] = [];
let demonstration: SheetInput;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  demonstration = await inputOfFolder(sampleFolder);
  browser = await openBrowser();
  // Past the sheet's own policy, or axe-core could not be put in.
  context = await browser.newContext({
    offline: true,
    bypassCSP: true,
    viewport: { width: PHONE, height: 800 },
  });
  context.on('request', (request) => asked.push(request.url()));
  page = await context.newPage();
}, 240_000);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

async function open(name: string, text: string): Promise<string> {
  const path = join(folder, `${name}.html`);
  writeFileSync(path, text);
  const address = pathToFileURL(path).href;
  asked.length = 0;
  await page.goto(address);
  return address;
}

// biome-ignore lint/performance/useDomNodeTextContent: what is shown is what is asked about
const readText = async () => (await page.evaluate(() => document.body.innerText)).replaceAll('\u00a0', ' ');

const longNamed = (input: SheetInput): SheetInput => {
  const name = `Plot <b>14</b> שלום ${'w'.repeat(150)}`;
  const { stages } = input.assessment;
  return {
    ...input,
    house: { ...input.house, name },
    assessment: { ...input.assessment, stages: stages.map((it, i) => ({ ...it, name: `${i} ${name}` })) },
  };
};

const cases: readonly [string, () => SheetInput][] = [
  ['of the demonstration house, undecided', () => demonstration],
  ['without a design, of one stage', () => inventedInput()],
  ['of fifteen stages', () => withStages(demonstration, 15)],
  ['of a hundred nights', () => withNights(demonstration, 100)],
  ['with names that never end', () => longNamed(demonstration)],
];

describe.each(cases)('the sheet %s, opened from a disk without a network', (name, input) => {
  test('fits a phone, asks for nothing, and axe-core finds nothing', async () => {
    const address = await open(name, sheetHtml(input()));
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE);
    expect(await axeViolations(page)).toEqual([]);
    expect(asked).toEqual([address]);
  });

  test('is no wider than A4 and Letter', async () => {
    await open(name, sheetHtml(input()));
    await page.emulateMedia({ media: 'print' });
    // Between margins of 15 mm; Letter is wider.
    await page.setViewportSize({ width: 680, height: 900 });
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('main *')]
        .filter((it) => !it.closest('svg') && it.getBoundingClientRect().right > 681)
        .map((it) => it.outerHTML.slice(0, 80)),
    );
    await page.emulateMedia({ media: null });
    await page.setViewportSize({ width: PHONE, height: 800 });
    expect(wide).toEqual([]);
  });
});

/** How many pages a PDF has. */
const pagesOf = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

describe('the sheet of the demonstration house', () => {
  test('reads with the figures of the JSON', async () => {
    await open('demonstration', sheetHtml(demonstration));
    const text = await readText();
    for (const { heatLossWK, timeConstantH, gap } of demonstration.assessment.stages) {
      if (heatLossWK === null || timeConstantH === null || gap === null)
        throw new Error('a figure is missing');
      expect(text).toContain(figures.heatLossBetween(heatLossWK));
      expect(text).toContain(figures.hoursBetween(timeConstantH));
      expect(text).toContain(figures.ratioBetween(gap.ratio));
    }
    for (const { sha256 } of demonstration.files) expect(text).toContain(sha256);
  });

  test.each(['A4', 'Letter'])('has its first page on one page of %s', async (format) => {
    await open('first page', firstPageHtml(demonstration));
    expect(pagesOf(await page.pdf({ format, preferCSSPageSize: true }))).toBe(1);
  });

  test('is printed without splitting a row or a drawing, its table heads on every page', async () => {
    await open('demonstration', sheetHtml(demonstration));
    await page.emulateMedia({ media: 'print' });
    const split = await page.evaluate(() =>
      [...document.querySelectorAll('tr, figure')]
        .filter((it) => getComputedStyle(it).breakInside !== 'avoid')
        .map((it) => it.outerHTML.slice(0, 80)),
    );
    const heads = await page.evaluate(() =>
      [...document.querySelectorAll('thead')].map((it) => getComputedStyle(it).display),
    );
    await page.emulateMedia({ media: null });
    expect(split).toEqual([]);
    expect(new Set(heads)).toEqual(new Set(['table-header-group']));
  });
});
