/** The database file: opened, brought to the newest layout, or refused. */
import { existsSync } from 'node:fs';
import Sqlite, { type Database } from 'better-sqlite3';
import { backupBeforeMigration } from './beforeMigration.ts';
import { migrations } from './migrations/index.ts';
import { whatIsAt } from './whatIsAt.ts';

/** The file cannot be used as it is; the message says why and what to do. It was left alone. */
export class UnusableDatabase extends Error {}

/** The name of the database in a data folder. */
export const DATABASE_FILE = 'stillwarm.sqlite';

/** How long a connection waits for another that writes [ms]. */
const BUSY = 5000;
/** What stays of the write-ahead log after a large import [bytes]. */
const LARGEST_LOG = 16 * 1024 * 1024;

/**
 * The one connection that writes. Creates the file where there is none and runs the migrations it lacks, after a
 * backup of the file as it was.
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
    db.pragma('secure_delete = ON'); // what is deleted is overwritten
    db.pragma(`journal_size_limit = ${LARGEST_LOG}`);
    const layout = layoutOf(db);
    if (layout > 0 && layout < migrations.length) backupBeforeMigration(db, path, layout);
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
  if (layoutOf(db) >= steps.length) return;
  db.transaction(() => {
    const layout = layoutOf(db); // another process may have been first
    for (const step of steps.slice(layout)) db.exec(step);
    db.pragma(`user_version = ${steps.length}`);
  }).immediate();
}

const layoutOf = (db: Database) => Number(db.pragma('user_version', { simple: true }));

function refuseUnlessOurs(path: string): void {
  const found = whatIsAt(path);
  if (found.kind === 'newer')
    throw new UnusableDatabase(
      `${path} was written by a newer version of Stillwarm (layout ${found.layout}; this one knows ${migrations.length}). ` +
        'It was left as it is. Start the newer version, or name another folder with --data.',
    );
  if (found.kind === 'no database')
    throw new UnusableDatabase(
      `${path} is not a database. Move it away, or name another folder with --data.`,
    );
  if (found.kind === 'of another program')
    throw new UnusableDatabase(
      `${path} is a database of another program. It was left as it is. Move it away, or name another folder with --data.`,
    );
}
