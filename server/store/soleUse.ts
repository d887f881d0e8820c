/**
 * A data folder is one program's at a time. SQLite holds the lock, on a small database of its own beside the houses': the
 * system lets go of it as soon as the process is gone, however it went, so that nobody ever has to clear it away.
 */
import { rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import Sqlite, { type Database, SqliteError } from 'better-sqlite3';
import { isDamage } from './soundness.ts';

/** In a data folder; it stays there when nobody has the folder. */
export const LOCK_FILE = 'stillwarm.lock';

/** How long to wait for a program that is about to let go [ms]. */
const PATIENCE = 250;

/** Another program has the folder. */
export class FolderInUse extends Error {
  /** @param by "a dashboard (process 4711 on mill, since 1 Dec 2026, 10:32)", as it said itself */
  constructor(readonly by: string) {
    super(`in use by ${by}`);
  }
}

/**
 * Answers what lets go of the folder again.
 *
 * @param who "a dashboard", for whoever comes second
 * @throws FolderInUse; SqliteError when the folder cannot be written to
 */
export function takeForItself(folder: string, who: string, now: Date): () => void {
  const path = join(folder, LOCK_FILE);
  try {
    return taken(path, who, now);
  } catch (error) {
    if (!isDamage(error)) throw error;
    // Nothing is in it that anybody needs.
    for (const end of ['', '-journal']) rmSync(`${path}${end}`, { force: true });
    return taken(path, who, now);
  }
}

function taken(path: string, who: string, now: Date): () => void {
  const db = new Sqlite(path, { timeout: PATIENCE });
  try {
    db.exec('BEGIN IMMEDIATE; CREATE TABLE IF NOT EXISTS taken (by TEXT NOT NULL) STRICT; DELETE FROM taken');
    const since = now.toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
    const by = `${who} (process ${process.pid} on ${hostname()}, since ${since})`;
    db.prepare('INSERT INTO taken VALUES (?)').run(by);
    // A change that is begun and never made: others may read who has it, and none may begin one.
    db.exec('COMMIT; BEGIN IMMEDIATE');
    return () => db.close();
  } catch (error) {
    const inUse = isBusy(error) ? new FolderInUse(takenBy(db)) : error;
    db.close();
    throw inUse;
  }
}

const isBusy = (error: unknown) => error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY');

function takenBy(db: Database): string {
  try {
    return db.prepare<[], string>('SELECT by FROM taken').pluck().get() ?? UNKNOWN;
  } catch {
    return UNKNOWN; // it is only just being written
  }
}
const UNKNOWN = 'another program';
