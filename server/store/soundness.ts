/** Whether a database file is whole. */
import Sqlite, { type Database, SqliteError } from 'better-sqlite3';

/** The file is damaged; the message names the first that was found. */
export class DamagedDatabase extends Error {}

/** @throws DamagedDatabase when a page, an index or a reference of the file is not as it should be */
export function assertSound(path: string): void {
  const db = new Sqlite(path, { readonly: true, fileMustExist: true });
  try {
    const fault = firstFault(db);
    if (fault !== null) throw new DamagedDatabase(fault);
  } finally {
    db.close();
  }
}

function firstFault(db: Database): string | null {
  try {
    const integrity = String(db.pragma('integrity_check(1)', { simple: true }));
    if (integrity !== 'ok') return integrity;
    const [dangling] = db.pragma('foreign_key_check') as { table: string }[];
    return dangling === undefined ? null : `a row of ${dangling.table} belongs to nothing`;
  } catch (error) {
    if (isDamage(error)) return error.message;
    throw error;
  }
}

export const isDamage = (error: unknown): error is Error =>
  error instanceof SqliteError && (error.code.startsWith('SQLITE_CORRUPT') || error.code === 'SQLITE_NOTADB');
