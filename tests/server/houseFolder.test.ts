import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readHouseFolder } from '../../server/houseFolder.ts';
import { freeName } from '../../server/jobs/stagedFolder.ts';
import { house, inside, insideFrom } from './inventedHouse.ts';

test('a house folder is read with the later exports of its loggers; a folder in place of a file is no file', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'stillwarm-folder-'));
  const loggers = [{ ...house.loggers[0], continuedIn: ['in (2).csv'] }, house.loggers[1]];
  writeFileSync(join(folder, 'house.json'), JSON.stringify({ ...house, loggers }));
  writeFileSync(join(folder, 'in.csv'), inside);
  writeFileSync(join(folder, 'in (2).csv'), insideFrom(400, 500));
  mkdirSync(join(folder, 'logs/out.csv'), { recursive: true });
  const read = await readHouseFolder(folder);
  expect(read.kind === 'house' && [...read.files.keys()]).toEqual(['in.csv', 'in (2).csv']);
  rmSync(folder, { recursive: true });
});

test.each([
  ['living.csv', 'living (2).csv'],
  ['logs/living', 'logs/living (2)'],
  ['logs.d/living', 'logs.d/living (2)'],
  ['living.csv.gz', 'living.csv (2).gz'],
  ['.csv', '.csv (2)'],
])('where %s is taken, %s is the next free name', (name, free) => {
  expect(freeName(name, (it) => it === name)).toBe(free);
  expect(freeName(name, () => false)).toBe(name);
});
