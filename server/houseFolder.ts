/** A house folder on disk: `house.json` and the files that it names. */
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { House } from '../src/house.ts';
import { type HouseProblem, readHouse } from '../src/houseFile.ts';

export type FolderReading =
  | { readonly kind: 'house'; readonly house: House; readonly files: ReadonlyMap<string, Uint8Array> }
  | { readonly kind: 'problems'; readonly problems: readonly HouseProblem[] }
  | { readonly kind: 'no house.json'; readonly why: string };

/** Larger files are not taken into memory [bytes]. */
const LARGEST_FILE = 512 * 1024 * 1024;

/** Reads the folder; a file that house.json names and that is not there is simply not in the map. */
export async function readHouseFolder(folder: string): Promise<FolderReading> {
  let text: string;
  try {
    text = await readFile(join(folder, 'house.json'), 'utf8');
  } catch (error) {
    return { kind: 'no house.json', why: error instanceof Error ? error.message : String(error) };
  }
  const reading = readHouse(text);
  if (reading.kind === 'problems') return reading;
  const { house } = reading;
  const named = [...house.loggers, ...(house.weather ?? []), ...(house.heat ?? [])].map(({ file }) => file);
  const files = new Map<string, Uint8Array>();
  for (const file of new Set(named.filter((it) => it !== undefined))) {
    const bytes = await readIfThere(join(folder, file));
    if (bytes !== null) files.set(file, bytes);
  }
  return { kind: 'house', house, files };
}

async function readIfThere(path: string): Promise<Uint8Array | null> {
  try {
    const { size } = await stat(path);
    return size > LARGEST_FILE ? null : await readFile(path);
  } catch {
    return null;
  }
}
