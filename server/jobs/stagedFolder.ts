/** House folders on disk, wherever their files lie: how one waits to be kept, and how the demonstration house comes. */
import { readFileSync } from 'node:fs';
import type { FolderFile } from '../store/houseToStore.ts';
import { sha256 } from '../store/sha256.ts';

export interface StagedFile {
  readonly path: string;
  /** The name that it came with; in the folder it may have another one. */
  readonly sentAs: string;
}

/** Each file by its name in the house folder, `house.json` among them. */
export type StagedFolder = ReadonlyMap<string, StagedFile>;

export interface BroughtFile extends FolderFile, StagedFile {
  readonly path: string;
}

/** All but `house.json`. */
export function readStaged(folder: StagedFolder): ReadonlyMap<string, BroughtFile> {
  const brought = new Map<string, BroughtFile>();
  for (const [name, file] of folder) {
    if (name === HOUSE_FILE) continue;
    const bytes = readFileSync(file.path);
    brought.set(name, { ...file, bytes, sha256: sha256(bytes) });
  }
  return brought;
}

export const HOUSE_FILE = 'house.json';

/** The name itself, or with the first number that makes it one of its own: "living (2).csv". */
export function freeName(name: string, taken: (name: string) => boolean): string {
  const [, stem = name, ending = ''] = /^(.+?)(\.[^./]*)?$/.exec(name) ?? [];
  for (let number = 1; ; number++) {
    const free = number === 1 ? name : `${stem} (${number})${ending}`;
    if (!taken(free)) return free;
  }
}
