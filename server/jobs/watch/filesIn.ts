/** What lies in a watched folder: the logs and the house.json of each house's folder. Nothing is opened. */
import type { Dirent, Stats } from 'node:fs';
import { lstat, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { HOUSE_FILE } from '../stagedFolder.ts';

export interface FoundFile {
  /** Below the watched folder, with "/": "Mill Lane/logs/living.csv". */
  readonly path: string;
  /** The folder of its house: "Mill Lane". */
  readonly folder: string;
  /** Below that: "logs/living.csv". */
  readonly name: string;
  /** Another one as soon as something of it changes. */
  readonly stamp: string;
}

/** As deep as this below the folder of a house. */
const DEEPEST = 3;
const MOST_FILES = 10_000;
const IS_LOG = /\.(csv|txt|tsv|tab|log|dat|zip|gz)$/i;

/** Links are not followed, hidden files not seen. @throws Error when the folder itself cannot be read */
export async function filesIn(watched: string): Promise<FoundFile[]> {
  const found: FoundFile[] = [];
  for (const { name: folder } of await foldersIn(await readdir(watched, { withFileTypes: true })))
    await collect(watched, folder, '', found);
  return found;
}

const foldersIn = async (entries: readonly Dirent[]) =>
  entries.filter((it) => it.isDirectory() && !it.name.startsWith('.'));

async function collect(watched: string, folder: string, below: string, found: FoundFile[]): Promise<void> {
  const entries = await readdir(join(watched, folder, below), { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    const name = below === '' ? entry.name : `${below}/${entry.name}`;
    if (entry.isFile() && (IS_LOG.test(entry.name) || name === HOUSE_FILE) && !entry.name.startsWith('.')) {
      const stats = await lstat(join(watched, folder, name)).catch(() => null);
      if (stats !== null && found.length < MOST_FILES)
        found.push({ path: `${folder}/${name}`, folder, name, stamp: stampOf(stats) });
    }
  }
  if (below.split('/').length >= DEEPEST) return;
  for (const { name } of await foldersIn(entries))
    await collect(watched, folder, below === '' ? name : `${below}/${name}`, found);
}

export const stampOf = ({ size, mtimeMs }: Stats) => `${size} bytes, ${mtimeMs}`;
