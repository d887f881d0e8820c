/** The version of a house before its latest one, its readings read anew from the original files. */
import type { Message } from '../../src/assessment.ts';
import { readLog } from '../../src/logs/index.ts';
import { say } from '../../src/words/index.ts';
import { openForReading } from '../store/database.ts';
import { type HouseToStore, houseToStore } from '../store/houseToStore.ts';
import { readingFrom } from '../store/reading.ts';
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
    const folder = readingFrom(db).before(id);
    if (folder === null) return { kind: 'none' };
    const reading = houseIn(folder.json);
    if (reading.kind === 'problems') return { kind: 'problems', problems: reading.problems.map(say) };
    const { house } = reading;
    return {
      kind: 'version',
      house: houseToStore({ house, json: folder.json, files: storedFiles(folder) }, into, readLog),
    };
  } finally {
    db.close();
  }
}
