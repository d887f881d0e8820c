import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { sheetCommand } from '../../server/sheetCommand.ts';
import { house, houseFolder } from '../server/inventedHouse.ts';
import { writeFolder } from './inputs.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'stillwarm-sheet-'));
  await writeFolder(folder, houseFolder);
});
afterEach(() => rm(folder, { recursive: true }));

async function run(...args: string[]) {
  const said = { out: '', err: '' };
  const code = await sheetCommand(
    args,
    new Date('2027-02-14T23:30Z'),
    { write: (text) => (said.out += text) },
    { write: (text) => (said.err += text) },
  );
  return { code, ...said };
}
const sheet = () => join(folder, 'sheet.html');
const written = async () => (await readdir(folder)).toSorted();
const before = ['house.json', 'in.csv', 'logs'];

describe('sheet FOLDER', () => {
  test('writes the sheet with the day that it is where the house stands', async () => {
    expect(await run(folder, '--out', sheet())).toEqual({ code: 0, out: `${sheet()}\n`, err: '' });
    expect(await readFile(sheet(), 'utf8')).toContain('Made on 14 February 2027');
  });

  test('writes the first page alone, with the day that it is told', async () => {
    await run(folder, '--first-page', sheet(), '--date', '2037-03-01');
    const text = await readFile(sheet(), 'utf8');
    expect(text).toContain('Made on 1 March 2037');
    expect(text).not.toContain('The technical record');
  });

  test('puts a photo into the sheet, whatever its name says', async () => {
    const png = Buffer.from('89504e470d0a1a0a0000', 'hex');
    await writeFile(join(folder, 'hatch.txt'), png);
    await run(folder, '--out', sheet(), '--photo', join(folder, 'hatch.txt'));
    expect(await readFile(sheet(), 'utf8')).toContain(`data:image/png;base64,${png.toString('base64')}`);
  });
});

describe('sheet writes nothing', () => {
  test.each([
    ['a photo of more than 10 MB', Buffer.alloc(10 * 1024 * 1024 + 1, 0xff), 'larger than 10 MB'],
    ['a photo that is no picture', Buffer.from('<svg onload="x"/>'), 'neither a JPEG nor a PNG'],
  ])('for %s, and says why', async (_, bytes, why) => {
    const photo = join(folder, 'in.csv.jpg');
    await writeFile(photo, bytes);
    const { code, err } = await run(folder, '--out', sheet(), '--photo', photo);
    expect([code, err]).toEqual([2, expect.stringContaining(why)]);
    expect(await written()).not.toContain('sheet.html');
  });

  test('for a photo that is not there', async () => {
    expect((await run(folder, '--out', sheet(), '--photo', 'nowhere.png')).err).toContain(
      'could not be read',
    );
    expect(await written()).toEqual(before);
  });

  test('without a house.json, for no date, or when nothing is asked for', async () => {
    expect((await run(join(folder, 'logs'), '--out', sheet())).err).toContain('there is no house.json here');
    expect((await run(folder, '--out', sheet(), '--date', '2027-02-30')).err).toContain('is no date');
    expect((await run(folder)).err).toContain('what to make of it');
    expect(await written()).toEqual(before);
  });

  test('where the file cannot be written, and leaves no half of it', async () => {
    expect((await run(folder, '--out', join(folder, 'nowhere', 'sheet.html'))).code).toBe(2);
    expect((await run(folder, '--out', join(folder, 'logs'))).code).toBe(2);
    expect(await written()).toEqual(before);
  });

  test('as a pack, when a file of the house cannot be read', async () => {
    const named = { ...house, loggers: [...house.loggers, { file: 'logs', place: 'void' }] };
    await writeFolder(folder, { 'house.json': JSON.stringify(named) });
    expect((await run(folder, '--pack', join(folder, 'pack.zip'))).err).toContain(
      'logs: this file could not be read',
    );
    expect(await written()).not.toContain('pack.zip');
  });

  test('as a pack, when a file of the house has a name that the pack needs', async () => {
    const [inside, outside] = house.loggers;
    const renamed = { ...house, loggers: [{ ...inside, file: 'README.txt' }, outside] };
    await writeFolder(folder, { 'house.json': JSON.stringify(renamed), 'README.txt': houseFolder['in.csv'] });
    expect((await run(folder, '--pack', join(folder, 'pack.zip'))).err).toContain('README.txt');
    expect(await written()).not.toContain('pack.zip');
  });
});
