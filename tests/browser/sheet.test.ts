/** The sheet as a person has it: a file on a disk, on a phone, without a network, and on paper. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { HouseDetail, NightsAnswer } from '../../server/api/shapes.ts';
import { firstPageHtml, type SheetInput, sheetHtml } from '../../src/sheet/index.ts';
import { inventedInput, withNights, withStages } from '../sheet/inputs.ts';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';
import { bodyRows, interval, isSame, known, wrongFigures } from './printedFigures.ts';
import { allOf, type PrintedDocument, readPrinted } from './printedPdf.ts';

const PHONE = 360; // [px]
const folder = mkdtempSync(join(tmpdir(), 'stillwarm-sheet-'));
const asked: string[] = [];
const { server, browser, demonstration: id, end } = await atHand();
const demonstration = await storedInput();
let context: BrowserContext;
let page: Page;

/** What the sheet of the demonstration house is made of, as it is stored. */
async function storedInput(): Promise<SheetInput> {
  const ask = async (path: string) => (await fetch(`${server.address}/api/houses/${id}${path}`)).json();
  const { house, assessment, files } = (await ask('')) as HouseDetail;
  const { curves } = (await ask('/nights')) as NightsAnswer;
  if (assessment === null) throw new Error('the demonstration house is not assessed');
  return {
    house,
    assessment,
    curves,
    files: files.map(({ file: name, bytes, sha256 }) => ({ name, bytes, sha256 })),
    version: '1.2.3',
    date: '2027-02-14',
    photos: [],
  };
}

beforeAll(async () => {
  // Past the sheet's own policy, or axe-core could not be put in.
  context = await browser.newContext({
    offline: true,
    bypassCSP: true,
    viewport: { width: PHONE, height: 800 },
  });
  context.on('request', (request) => asked.push(request.url()));
  page = await context.newPage();
});

afterAll(async () => {
  await end();
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

const longNamed = (input: SheetInput): SheetInput => {
  const name = `Plot <b>14</b> שלום ${'W'.repeat(180)}`;
  const { stages, comparisons } = input.assessment;
  return {
    ...input,
    house: { ...input.house, name },
    assessment: {
      ...input.assessment,
      stages: stages.map((it, i) => ({
        ...it,
        name: `${i} ${name}`,
        gap: it.gap && {
          ...it.gap,
          elements: it.gap.elements?.map((own, k) => ({ ...own, name: `${k} ${name}` })),
        },
      })),
      comparisons: comparisons.map((it) => ({ ...it, before: `0 ${name}`, after: `1 ${name}` })),
    },
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

const print = async (format: string) =>
  readPrinted(await page.pdf({ format, tagged: true, printBackground: true }));

describe.each(cases)('the sheet %s, printed to PDF', (name, input) => {
  test.each(['A4', 'Letter'])(
    'on %s splits no row and no drawing, and has its first page on one',
    async (format) => {
      await open(name, sheetHtml(input()));
      const printed = await print(format);
      const tables = allOf(printed, 'Table');
      const rows = tables.flatMap(bodyRows);
      expect(rows.length).toBeGreaterThan(10);
      const split = [...rows, ...allOf(printed, 'Figure')].filter(({ pages }) => pages.length > 1);
      expect(split.map(({ text, pages }) => [text, pages])).toEqual([]);
      // Neither a caption nor a head stands at the foot of a page without a row.
      const alone = tables.filter((it) => it.pages[0] !== bodyRows(it)[0]?.pages[0]);
      expect(alone.map(({ text }) => text)).toEqual([]);
      const headings = allOf(printed, 'H2').map(({ pages }) => pages);
      expect(headings.slice(0, 2)).toEqual([[1], [2]]);
    },
  );
});

describe('the sheet of the demonstration house, printed to PDF', () => {
  let printed: PrintedDocument;
  beforeAll(async () => {
    await open('demonstration', sheetHtml(demonstration));
    printed = await print('A4');
  });

  test('has in each cell of each table the figures of the JSON', () => {
    expect(wrongFigures(printed, demonstration)).toEqual([]);
  });

  test('has on its rulers and in the answer the figures of the JSON', () => {
    const { stages, design, comparisons } = demonstration.assessment;
    const last = stages[stages.length - 1];
    const drawn = known(design?.heatLossAsTestedWK);
    const figures = [...new Set(allOf(printed, 'Figure').map(({ text }) => text))];
    const onRuler = (label: string) =>
      figures.flatMap(
        (it) => it.match(new RegExp(`${label}(−?[\\d.]+to−?[\\d.]+[^(]*\\(−?[\\d.]+\\))`))?.[1] ?? [],
      );
    for (const { name, heatLossWK, gap } of stages) {
      const [loss, ratio] = onRuler(name.replace(/\s/g, ''));
      expect([loss, isSame(loss, interval(heatLossWK))]).toEqual([loss, true]);
      expect([ratio, isSame(ratio, interval(gap?.ratio))]).toEqual([ratio, true]);
    }
    expect(onRuler('Measured').every((it) => isSame(it, interval(last.heatLossWK)))).toBe(true);
    const [{ heatLossRatio, timeConstantRatio }] = comparisons;
    expect(isSame(onRuler('Heatloss')[0], interval(heatLossRatio))).toBe(true);
    expect(isSame(onRuler('Timeconstant')[0], interval(timeConstantRatio))).toBe(true);
    const answer = /Itlosesbetween(.*?)\./.exec(printed.text)?.[1] ?? '';
    expect([answer, isSame(answer, [...interval(last.heatLossWK).slice(0, 2), ...drawn])]).toEqual([
      answer,
      true,
    ]);
  });

  test('has every sentence of the JSON that says what was found, assumed or advised', () => {
    const { stages, design, comparisons, warnings } = demonstration.assessment;
    const said = [
      ...warnings,
      ...(design?.notes ?? []),
      ...comparisons.flatMap(({ notes }) => notes),
      ...stages.flatMap((it) => [...it.notes, ...it.estimates.flatMap(({ notes }) => notes)]),
      ...(stages.at(-1)?.gap?.notes ?? []),
      ...(stages.at(-1)?.next ?? []),
    ];
    const missing = said.filter(({ text }) => !printed.text.includes(text.replace(/\s/g, '')));
    expect(missing.map(({ text }) => text)).toEqual([]);
    expect(said.length).toBeGreaterThan(10);
  });
});

test.each(['A4', 'Letter'])('the first page alone is one page of %s, whatever the names', async (format) => {
  for (const input of [demonstration, longNamed(demonstration)]) {
    await open('first page', firstPageHtml(input));
    expect((await print(format)).pageCount).toBe(1);
  }
});
