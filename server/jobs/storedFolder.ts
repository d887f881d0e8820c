/** The folder of a house as it is stored. */
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import type { FolderFile } from '../store/houseToStore.ts';
import type { Reading } from '../store/reading.ts';
import type { StoredFile } from '../store/versions.ts';

export interface StoredFolder {
  readonly json: Uint8Array;
  readonly files: readonly StoredFile[];
  file(name: string): Uint8Array | null;
}

/** As `house.json` is read; an old one may be none for this version of the program. */
export const houseIn = (json: Uint8Array) => readHouse(new TextDecoder().decode(json));

export function storedFiles({ files, file }: StoredFolder): ReadonlyMap<string, FolderFile> {
  const found = new Map<string, FolderFile>();
  for (const { file: name, sha256 } of files) {
    const bytes = file(name);
    if (bytes !== null) found.set(name, { bytes, sha256, path: null });
  }
  return found;
}

/** A stored house with its files, as what is brought onto it begins from. */
export interface StoredBase {
  readonly house: House;
  readonly json: Uint8Array;
  readonly files: ReadonlyMap<string, FolderFile>;
}

/** Null when it is gone, or when its `house.json` is none for this version of the program. */
export function storedBase(store: Reading, id: string): StoredBase | null {
  const json = store.json(id);
  if (json === null) return null;
  const reading = houseIn(json);
  if (reading.kind === 'problems') return null;
  const folder = { json, files: store.files(id), file: (name: string) => store.file(id, name) };
  return { house: reading.house, json, files: storedFiles(folder) };
}
