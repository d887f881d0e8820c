/** The database file: opened, brought to the newest layout, or refused. */
import { existsSync } from 'node:fs';
import Sqlite, { type Database, SqliteError } from 'better-sqlite3';
import { migrations } from './migrations/index.ts';

/** The file cannot be used as it is; the message says why and what to do. It was left alone. */
export class UnusableDatabase extends Error {}

/** How long a connection waits for another that writes [ms]. */
const BUSY = 5000;
/** What stays of the write-ahead log after a large import [bytes]. */
const LARGEST_LOG = 16 * 1024 * 1024;

/**
 * The one connection that writes. Creates the file where there is none and runs the migrations it lacks.
 *
 * @throws UnusableDatabase when the file is no database of ours, or one of a newer version
 */
export function openForWriting(path: string): Database {
  if (existsSync(path)) refuseUnlessOurs(path);
  const db = new Sqlite(path, { timeout: BUSY });
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    db.pragma(`journal_size_limit = ${LARGEST_LOG}`);
    migrate(db, migrations);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** A connection that only reads, beside the one that writes. The file must be there. */
export function openForReading(path: string): Database {
  return new Sqlite(path, { readonly: true, fileMustExist: true, timeout: BUSY });
}

/** Runs the migrations that the database lacks, all in one transaction. */
export function migrate(db: Database, steps: readonly string[]): void {
  const version = versionOf(db);
  if (version >= steps.length) return;
  db.transaction(() => {
    for (const step of steps.slice(version)) db.exec(step);
    db.pragma(`user_version = ${steps.length}`);
  }).immediate();
}

const versionOf = (db: Database) => Number(db.pragma('user_version', { simple: true }));

function refuseUnlessOurs(path: string): void {
  const db = new Sqlite(path, { readonly: true, timeout: BUSY });
  try {
    const version = versionOf(db);
    if (version > migrations.length)
      throw new UnusableDatabase(
        `${path} was written by a newer version of Stillwarm (layout ${version}; this one knows ${migrations.length}). ` +
          'It was left as it is. Start the newer version, or name another folder with --data.',
      );
  } catch (error) {
    if (error instanceof SqliteError && error.code === 'SQLITE_NOTADB')
      throw new UnusableDatabase(
        `${path} is not a database. Move it away, or name another folder with --data.`,
      );
    throw error;
  } finally {
    db.close();
  }
}
