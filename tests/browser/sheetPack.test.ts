/** The handover pack from the page and back into it. */
import { readFileSync } from 'node:fs';
import { unzipSync, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';

const { server, browser, demonstration: id, end } = await atHand();
afterAll(end);
let page: Page;
let pack: Uint8Array;

beforeAll(async () => {
  page = await browser.newPage();
  await page.goto(`${server.address}/house/${id}`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'The handover pack as a zip' }).click(),
  ]);
  pack = readFileSync(await download.path());
});

const bring = (bytes: Uint8Array) =>
  page
    .getByLabel('Bring a handover pack back in')
    .setInputFiles({ name: 'pack.zip', mimeType: 'application/zip', buffer: Buffer.from(bytes) });

const houses = async () =>
  ((await (await fetch(`${server.address}/api/houses`)).json()) as { houses: { id: string }[] }).houses;

test('a pack in which a file was changed is refused, the file is named, and nothing is stored', async () => {
  const files = unzipSync(pack);
  const text = new TextDecoder().decode(files['living.csv']);
  files['living.csv'] = new TextEncoder().encode(text.replace('19.', '18.'));
  await bring(zipSync(files));
  const refusal = page.getByRole('alert').filter({ hasText: 'not the one that was packed' });
  await refusal.waitFor();
  expect(await refusal.textContent()).toContain('living.csv');
  expect(await houses()).toHaveLength(1);
  expect(await axeViolations(page)).toEqual([]);
});

test('a pack as it was made becomes a house of its own', async () => {
  await bring(pack);
  await page.getByText(/Every file is as it was packed by Stillwarm/).waitFor({ timeout: 60_000 });
  expect(await houses()).toHaveLength(2);
  await page.getByRole('link', { name: 'The house is here' }).click();
  await page.waitForURL(/\/house\//);
});

/** From the desk onto the page. */
async function drop(name: string, bytes: Uint8Array) {
  const dataTransfer = await page.evaluateHandle(
    (given) => {
      const held = new DataTransfer();
      held.items.add(new File([new Uint8Array(given.bytes)], given.name));
      return held;
    },
    { name, bytes: [...bytes] },
  );
  await page.getByRole('main').dispatchEvent('drop', { dataTransfer });
}

const bytesOf = (text: string) => new TextEncoder().encode(text);

test.each(['/', '/bring'])(
  'a pack that is dropped on %s is known for one; what is wrong with it is told there',
  async (path) => {
    const files = unzipSync(pack);
    const newer = JSON.stringify({ pack: 99, software: 'Stillwarm 99.0.0', made: '2040-01-01' });
    const before = (await houses()).length;
    await page.goto(`${server.address}${path}`, { waitUntil: 'networkidle' });
    for (const [change, told] of [
      [
        { 'handover/pack.json': bytesOf(newer) },
        'made by Stillwarm 99.0.0, which lays packs out in a newer way',
      ],
      [{ 'living.csv': bytesOf('none') }, 'This file is not the one that was packed'],
      [{ '../living.csv': bytesOf('none') }, 'would be unpacked outside of its folder: “../living.csv”'],
    ] as const) {
      await drop('pack.zip', zipSync({ ...files, ...change }));
      await page.getByRole('alert').filter({ hasText: told }).waitFor({ timeout: 60_000 });
    }
    expect(await houses()).toHaveLength(before);
    await drop('pack.zip', pack);
    await page.getByText(/Every file is as it was packed by Stillwarm/).waitFor({ timeout: 60_000 });
    expect(await houses()).toHaveLength(before + 1);
  },
);

test('a zip that is no pack goes the way of any log, from the houses to the bringing', async () => {
  await page.goto(server.address, { waitUntil: 'networkidle' });
  await drop('attic.zip', zipSync({ 'attic.csv': unzipSync(pack)['living.csv'] }));
  await page.waitForURL('**/bring');
  await page.getByRole('heading', { name: /attic/, level: 3 }).waitFor({ timeout: 60_000 });
});

test('photos are put into the sheet and the pack; what is none, or is too large, is told by its name', async () => {
  await page.goto(`${server.address}/house/${id}`);
  await page.getByText('With photos').click();
  const make = page.getByRole('button', { name: 'The handover sheet with these photos' });
  const pick = (name: string, buffer: Buffer) =>
    page.getByLabel('Photos for the sheet').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
  for (const [name, buffer, told] of [
    ['hatch.jpg', Buffer.from('<svg/>'), /hatch\.jpg This is neither a JPEG nor a PNG picture/],
    ['large.jpg', Buffer.alloc(11 * 1024 * 1024, 0xff), /large\.jpg This photo is larger than 10 MB/],
  ] as const) {
    await pick(name, buffer);
    await make.click();
    await page.getByRole('alert').filter({ hasText: told }).waitFor();
  }
  await pick('hatch.jpg', Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
  expect(await axeViolations(page)).toEqual([]);
  const made = async (button: string) => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ]);
    return readFileSync(await download.path());
  };
  expect((await made('The handover sheet with these photos')).toString()).toContain(
    '<img src="data:image/jpeg',
  );
  const zip = unzipSync(await made('The handover pack with these photos'));
  expect(new TextDecoder().decode(zip['handover/sheet.html'])).toContain('<img src="data:image/jpeg');
});

test('the sheet and its first page come as files', async () => {
  const [one] = await houses();
  await page.goto(`${server.address}/house/${one.id}`);
  for (const name of ['The handover sheet', 'Its first page alone']) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name, exact: true }).click(),
    ]);
    expect(readFileSync(await download.path(), 'utf8')).toContain('evidence, not a certificate');
  }
});
