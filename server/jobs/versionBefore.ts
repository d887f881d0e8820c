/** The version of a house before its latest one, its readings read anew from the original files unless they are those of now. */
import { isDeepStrictEqual } from 'node:util';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { readLog } from '../../src/logs/index.ts';
import { say } from '../../src/words/index.ts';
import { openForReading } from '../store/database.ts';
import { type HouseToStore, houseToStore, readAlike, unreadHouse } from '../store/houseToStore.ts';
import { type Reading, readingFrom } from '../store/reading.ts';
import type { StoredFile } from '../store/versions.ts';
import { houseIn, storedFiles } from './storedFolder.ts';

export type VersionBefore =
  | { readonly kind: 'version'; readonly house: HouseToStore }
  | { readonly kind: 'none' }
  /** Its `house.json` was valid once. */
  | { readonly kind: 'problems'; readonly problems: readonly Message[] };

/**
 * @param database path of the file, which is opened for reading
 * @param into     a folder for the readings, made here
 */
export function versionBefore(database: string, id: string, into: string): VersionBefore {
  const db = openForReading(database);
  try {
    const store = readingFrom(db);
    const folder = store.before(id);
    if (folder === null) return { kind: 'none' };
    const reading = houseIn(folder.json);
    if (reading.kind === 'problems') return { kind: 'problems', problems: reading.problems.map(say) };
    const before = { house: reading.house, json: folder.json, files: storedFiles(folder) };
    const same = readsAsNow(before.house, folder.files, store, id);
    return { kind: 'version', house: same ? unreadHouse(before) : houseToStore(before, into, readLog) };
  } finally {
    db.close();
  }
}

function readsAsNow(house: House, files: readonly StoredFile[], store: Reading, id: string): boolean {
  const json = store.json(id);
  const now = json === null ? null : houseIn(json);
  return now?.kind === 'house' && readAlike(house, now.house) && isDeepStrictEqual(files, store.files(id));
}
