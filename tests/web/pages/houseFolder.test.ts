import { expect, test } from 'vitest';
import { houseFolder } from '../../../web/pages/houseFolder.ts';

const pathsOf = (...paths: string[]) =>
  houseFolder(paths.map((path) => ({ path, file: path }))).map(({ path }) => path);

test.each([
  ['a folder dropped whole', ['home/living.csv', 'home/house.json'], ['house.json', 'living.csv']],
  ['files dropped without their folder', ['outside.csv', 'house.json'], ['house.json', 'outside.csv']],
  ['files in a folder below', ['home/logs/a.csv', 'home/house.json'], ['house.json', 'logs/a.csv']],
  ['a house two folders down', ['x/home/a.csv', 'x/home/house.json'], ['house.json', 'a.csv']],
  ['a folder of CSVs only', ['logs/a.csv', 'logs/b.csv'], ['a.csv', 'b.csv']],
  ['CSVs from two folders', ['one/a.csv', 'two/b.csv'], ['one/a.csv', 'two/b.csv']],
  [
    'a copy of house.json further down',
    ['home/old/house.json', 'home/house.json'],
    ['house.json', 'old/house.json'],
  ],
])('%s: paths are those that house.json names, house.json first', (_, given, wanted) => {
  expect(pathsOf(...given)).toEqual(wanted);
});

test('files that the computer keeps for itself are left out', () => {
  expect(pathsOf('home/.hidden', 'home/house.json', '__MACOSX/home/house.json', 'home/.git/config')).toEqual([
    'house.json',
  ]);
});
