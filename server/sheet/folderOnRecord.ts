/** A house folder on disk with the hash of every file, as a sheet has them. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import type { FileRemark } from '../../src/record/index.ts';
import type { FileOnRecord } from '../../src/sheet/index.ts';
import { say } from '../../src/words/index.ts';
import { readHouseFolder } from '../houseFolder.ts';
import { sha256 } from '../store/sha256.ts';

export interface FolderOnRecord {
  readonly house: House;
  readonly json: Uint8Array;
  /** Those that house.json names. */
  readonly bytes: ReadonlyMap<string, Uint8Array>;
  readonly remarks: ReadonlyMap<string, FileRemark>;
  /** `house.json`, then the others. */
  readonly files: readonly FileOnRecord[];
}

export async function folderOnRecord(
  folder: string,
): Promise<({ kind: 'folder' } & FolderOnRecord) | { kind: 'problems'; problems: readonly Message[] }> {
  const read = await readHouseFolder(folder);
  if (read.kind === 'no house.json') return { kind: 'problems', problems: [noHouse(folder, read.why)] };
  if (read.kind === 'problems') return { kind: 'problems', problems: read.problems.map(say) };
  const json = await readFile(join(folder, 'house.json'));
  const files = [['house.json', json] as const, ...read.files].map(
    ([name, bytes]): FileOnRecord => ({ name, bytes: bytes.length, sha256: sha256(bytes) }),
  );
  return { kind: 'folder', house: read.house, json, bytes: read.files, remarks: read.remarks, files };
}

const noHouse = (folder: string, why: string): Message => ({
  code: 'no-house-json',
  text: `${folder}: there is no house.json here (${why}).`,
  remedy: 'A house folder holds house.json and the CSVs that it names.',
});
