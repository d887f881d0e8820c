/** The version of a house before its latest one; of its logs those are read anew that differ from what it is now. */
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { readLog } from '../../src/logs/index.ts';
import { shelfOf } from '../../src/record/index.ts';
import { say } from '../../src/words/index.ts';
import { openForReading } from '../store/database.ts';
import { type HouseToStore, houseToStore, readAlike, withoutReadings } from '../store/houseToStore.ts';
import { type Reading, readingFrom } from '../store/reading.ts';
import type { StoredFile } from '../store/versions.ts';
import { readingOnce } from './readingOnce.ts';
import { houseIn, storedFiles } from './storedFolder.ts';
import { partWith, storedByPart, toldByPart, touchedFiles } from './touched.ts';

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
    const { house } = reading;
    const { json, files } = folder;
    const byTouched = fromWhatIsNow({ house, json, files }, id, store, into);
    if (byTouched !== null) return { kind: 'version', house: byTouched };
    const before = { house, json, files: storedFiles(folder) };
    return { kind: 'version', house: houseToStore(before, into, readLog) };
  } finally {
    db.close();
  }
}

interface Version {
  readonly house: House;
  readonly json: Uint8Array;
  readonly files: readonly StoredFile[];
}

/** From the house as it is now, with the loggers read anew that differ; null where all have to be. */
function fromWhatIsNow(before: Version, id: string, store: Reading, into: string): HouseToStore | null {
  const json = store.json(id);
  const reading = json === null ? null : houseIn(json);
  if (reading?.kind !== 'house') return null;
  const now = { house: reading.house, files: store.files(id) };
  const changed = differing(now.files, before.files);
  const whole = {
    house: before.house,
    json: before.json,
    files: before.files.map(({ file, ...rest }) => ({ name: file, ...rest, path: null })),
  };
  if (changed.size === 0 && readAlike(now.house, before.house)) return withoutReadings(whole);
  const touched = touchedFiles(now.house, before.house, changed);
  if (touched === null) return null;
  const read = readingOnce();
  const known = new Map<string, Uint8Array>();
  const partOf = ({ house, files }: Pick<Version, 'house' | 'files'>) => {
    const part = partWith(house, touched);
    const bytes = new Map<string, Uint8Array>();
    for (const { file, sha256 } of files) {
      const content = touched.has(file) ? (known.get(sha256) ?? store.original(sha256)) : null;
      if (content === null) continue;
      known.set(sha256, content);
      bytes.set(file, content);
    }
    const shelf = shelfOf(part, bytes, { read });
    return { part, shelf, told: toldByPart(part, shelf) };
  };
  const { told, ...then } = partOf(before);
  if (told === null || partOf(now).told !== told) return null;
  return storedByPart(whole, { ...then, files: touched, stored: store.channels(id), into });
}

/** The names of files that only one of two versions has, or each with other bytes. */
function differing(some: readonly StoredFile[], others: readonly StoredFile[]): ReadonlySet<string> {
  const hashes = (files: readonly StoredFile[]) => new Map(files.map(({ file, sha256 }) => [file, sha256]));
  const [one, other] = [hashes(some), hashes(others)];
  return new Set([...one.keys(), ...other.keys()].filter((file) => one.get(file) !== other.get(file)));
}
