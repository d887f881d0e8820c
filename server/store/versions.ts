/** The versions of a house as they are stored: `house.json` and the original files of each. */
import type { Database } from 'better-sqlite3';

/** One original file under its name in a house folder. */
export interface StoredFile {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
}

const HOUSE = '(SELECT number FROM house WHERE id = ?)';

export function versionsIn(db: Database) {
  const numbers = db
    .prepare<[string], number>(`SELECT number FROM version WHERE house = ${HOUSE} ORDER BY number`)
    .pluck();
  const kept = db.prepare<[number], number | null>('SELECT kept_s FROM version WHERE number = ?').pluck();
  const byHand = db
    .prepare<[string], number | null>(
      `SELECT max(number) FROM version WHERE house = ${HOUSE} AND posted_day IS NULL`,
    )
    .pluck();
  const json = db.prepare<[number], Buffer>('SELECT json FROM version WHERE number = ?').pluck();
  const files = db.prepare<[number], StoredFile>(
    `SELECT name AS file, bytes, sha256 FROM file JOIN original USING (sha256)
     WHERE version = ? ORDER BY file.rowid`,
  );
  const content = db
    .prepare<[number, string], Buffer>(
      'SELECT content FROM file JOIN original USING (sha256) WHERE version = ? AND name = ?',
    )
    .pluck();
  const original = db.prepare<[string], Buffer>('SELECT content FROM original WHERE sha256 = ?').pluck();
  const latest = (id: string) => numbers.all(id).at(-1);

  const filesOf = (version: number | undefined) => (version === undefined ? [] : files.all(version));
  const fileOf = (version: number | undefined, name: string): Uint8Array | null =>
    version === undefined ? null : (content.get(version, name) ?? null);
  const jsonOf = (version: number | undefined): Uint8Array | null =>
    version === undefined ? null : (json.get(version) ?? null);

  return {
    /** `house.json` byte for byte; null for a house that is not there. */
    json: (id: string) => jsonOf(latest(id)),
    files: (id: string) => filesOf(latest(id)),
    file: (id: string, name: string) => fileOf(latest(id), name),
    /** Whichever house has it, under whatever name. */
    original: (sha256: string): Uint8Array | null => original.get(sha256) ?? null,
    /** The names of those files that were posted since a person last brought or changed something. */
    postedFiles(id: string): string[] {
      const before = new Set(filesOf(byHand.get(id) ?? undefined).map(({ file }) => file));
      return filesOf(latest(id)).flatMap(({ file }) => (before.has(file) ? [] : [file]));
    },
    /** What was there before the latest of it was kept; null when that was the first. */
    before(id: string) {
      const version = numbers.all(id).at(-2);
      const text = jsonOf(version);
      if (text === null) return null;
      return { json: text, files: filesOf(version), file: (name: string) => fileOf(version, name) };
    },
    /** When each version was kept [s], null where that is not known, and the files it has; the oldest first. */
    versions: (id: string) =>
      numbers.all(id).map((version) => ({ kept: kept.get(version) ?? null, files: files.all(version) })),
  };
}
