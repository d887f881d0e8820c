/** The walk through what was dropped, on stand-ins for the browser's entries. */
import { expect, test } from 'vitest';
import { droppedFiles, NotOpened } from '../../web/pages/droppedFiles.ts';

type Tree = { readonly [name: string]: Tree | 'file' | 'locked' };

/** As a browser has it: a reader hands out at most a hundred entries at a time, and nothing when it is done. */
function entryOf(path: string, node: Tree[string]): FileSystemEntry {
  const name = path.slice(path.lastIndexOf('/') + 1);
  if (node === 'file' || node === 'locked')
    return {
      name,
      fullPath: path,
      isFile: true,
      isDirectory: false,
      file: (found: (file: File) => void, failed: (error: Error) => void) =>
        node === 'file' ? found(new File(['x'], name)) : failed(new Error('NotReadableError')),
    } as unknown as FileSystemEntry;
  return {
    name,
    fullPath: path,
    isFile: false,
    isDirectory: true,
    createReader: () => {
      const left = Object.entries(node).map(([inside, it]) => entryOf(`${path}/${inside}`, it));
      return { readEntries: (found: (some: FileSystemEntry[]) => void) => found(left.splice(0, 100)) };
    },
  } as unknown as FileSystemEntry;
}

const transferOf = (tree: Tree) =>
  ({
    items: Object.entries(tree).map(([name, node]) => ({
      kind: 'file',
      webkitGetAsEntry: () => entryOf(`/${name}`, node),
      getAsFile: () => null,
    })),
  }) as unknown as DataTransfer;

const pathsOf = async (tree: Tree) =>
  (await droppedFiles(transferOf(tree))).map(({ path }) => path).toSorted();

test('a dropped folder is walked to its end, folders in folders too', async () => {
  expect(
    await pathsOf({ home: { 'house.json': 'file', logs: { 'a.csv': 'file', old: { 'b.csv': 'file' } } } }),
  ).toEqual(['home/house.json', 'home/logs/a.csv', 'home/logs/old/b.csv']);
});

test('a folder of more than a hundred files comes whole', async () => {
  const many = Object.fromEntries(Array.from({ length: 250 }, (_, i) => [`log-${i}.csv`, 'file'] as const));
  expect(await pathsOf({ home: many })).toHaveLength(250);
});

test('files and folders dropped together all come; an empty folder gives nothing', async () => {
  expect(await pathsOf({ 'house.json': 'file', logs: { 'a.csv': 'file' }, empty: {} })).toEqual([
    'house.json',
    'logs/a.csv',
  ]);
});

test('a text that was dragged along is no file', async () => {
  const items = [{ kind: 'string' }] as unknown as DataTransferItemList;
  expect(await droppedFiles({ items } as DataTransfer)).toEqual([]);
});

test('a file that may not be opened is named', async () => {
  const dropped = droppedFiles(transferOf({ home: { 'house.json': 'file', 'a.csv': 'locked' } }));
  await expect(dropped).rejects.toThrow(NotOpened);
  await expect(dropped).rejects.toThrow('home/a.csv');
});
