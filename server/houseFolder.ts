/** A house folder on disk: `house.json` and the files that it names. */
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { House } from '../src/house.ts';
import { type HouseProblem, readHouse } from '../src/houseFile.ts';
import { type FileRemark, filesNamed } from '../src/record/index.ts';

export type FolderReading =
  | {
      readonly kind: 'house';
      readonly house: House;
      readonly files: ReadonlyMap<string, Uint8Array>;
      /** Files that could not be taken in, or are still being written. */
      readonly remarks: ReadonlyMap<string, FileRemark>;
    }
  | { readonly kind: 'problems'; readonly problems: readonly HouseProblem[] }
  | { readonly kind: 'no house.json'; readonly why: string };

/** Larger files are not taken into memory [bytes]. */
const LARGEST_FILE = 512 * 1024 * 1024;

/** Reads the folder; a file that house.json names and that is not there is in neither map. */
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
  const files = new Map<string, Uint8Array>();
  const remarks = new Map<string, FileRemark>();
  for (const file of filesNamed(house)) {
    const { bytes, remark } = await takeIn(join(folder, file));
    if (bytes !== null) files.set(file, bytes);
    if (remark !== null) remarks.set(file, remark);
  }
  return { kind: 'house', house, files, remarks };
}

/** The bytes of a file, null where there are none to be had, and why. */
async function takeIn(path: string): Promise<{ bytes: Uint8Array | null; remark: FileRemark | null }> {
  try {
    const before = await stat(path);
    if (before.isDirectory()) return { bytes: null, remark: 'a folder' };
    if (before.size > LARGEST_FILE) return { bytes: null, remark: 'too large' };
    const bytes = await readFile(path);
    const after = await stat(path);
    const changed = after.size !== before.size || after.mtimeMs !== before.mtimeMs;
    return { bytes, remark: changed ? 'still being written' : null };
  } catch (error) {
    const isThere = !(error instanceof Error && 'code' in error && error.code === 'ENOENT');
    return { bytes: null, remark: isThere ? 'unreadable' : null };
  }
}
