/** A backup put in the place of the database: checked first, and the database that was there put aside. */
import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { DATABASE_FILE } from './database.ts';
import { assertSound, DamagedDatabase, isDamage } from './soundness.ts';
import { whatIsAt } from './whatIsAt.ts';
import { fileToDisk, folderToDisk, halfOf, removeHalves } from './wholeCopy.ts';

export type Restored =
  /** `aside` holds what was there; null when nothing was. */
  | { readonly kind: 'restored'; readonly aside: string | null }
  | { readonly kind: 'no backup' }
  | { readonly kind: 'newer' }
  | { readonly kind: 'damaged'; readonly fault: string }
  | { readonly kind: 'the database itself' }
  /** Another process has the database open. */
  | { readonly kind: 'in use' };

/** How long to wait for a program that is about to close the database [ms]. */
const PATIENCE = 1000;

/**
 * @param now in the name of what is put aside
 * @throws Error of the file system; what was in the folder is then as it was
 */
export function restoreInto(folder: string, backup: string, now: Date): Restored {
  mkdirSync(folder, { recursive: true });
  const database = join(folder, DATABASE_FILE);
  if (!statSync(backup).isFile()) return { kind: 'no backup' };
  if (existsSync(database) && realpathSync(database) === realpathSync(backup))
    return { kind: 'the database itself' };
  const half = halfOf(database);
  try {
    removeHalves(database);
    copyFileSync(backup, half);
    const refusal = whyNo(half);
    if (refusal !== null) return refusal;
    fileToDisk(half);
    if (!existsSync(database)) {
      renameSync(half, database);
      folderToDisk(folder);
      return { kind: 'restored', aside: null };
    }
    const aside = join(folder, `stillwarm before restoring ${stamp(now)}.sqlite`);
    return insteadOf(database, half, aside) ? { kind: 'restored', aside } : { kind: 'in use' };
  } finally {
    for (const end of ['', '-wal', '-shm']) rmSync(`${half}${end}`, { force: true });
  }
}

/** What speaks against a copy of the backup; null when nothing does. */
function whyNo(copy: string): Restored | null {
  try {
    const found = whatIsAt(copy);
    if (found.kind === 'newer') return { kind: 'newer' };
    if (found.kind !== 'ours' || found.layout === 0) return { kind: 'no backup' };
    assertSound(copy);
    return null;
  } catch (error) {
    if (error instanceof DamagedDatabase || isDamage(error)) return { kind: 'damaged', fault: error.message };
    throw error;
  }
}

/** Whether nobody else had the database open, so that it could be replaced: at no moment is there none. */
function insteadOf(database: string, restored: string, aside: string): boolean {
  const release = holdAlone(database);
  if (release === null) return false;
  try {
    if (existsSync(aside)) throw new Error(`${aside} is there already`);
    linkOrCopy(database, aside);
    // Only a damaged database still has a log of changes by now.
    if (existsSync(`${database}-wal`)) renameSync(`${database}-wal`, `${aside}-wal`);
    rmSync(`${database}-shm`, { force: true });
    renameSync(restored, database);
    folderToDisk(join(database, '..'));
    return true;
  } finally {
    release();
  }
}

/** Keeps everyone else out of the database; null when somebody has it open. One that is damaged keeps nobody out. */
function holdAlone(database: string): (() => void) | null {
  const db = new Sqlite(database, { timeout: PATIENCE });
  try {
    db.pragma('journal_mode = DELETE'); // takes the log of changes into the file, and needs it for itself
    db.exec('BEGIN EXCLUSIVE');
    return () => db.close();
  } catch (error) {
    db.close();
    if (error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY')) return null;
    if (isDamage(error)) return () => {};
    throw error;
  }
}

function linkOrCopy(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch {
    copyFileSync(from, to); // a file system without links
  }
}

/** "2027-01-02 12.30.05", in UTC: a name on every system. */
const stamp = (now: Date) => now.toISOString().slice(0, 19).replace('T', ' ').replaceAll(':', '.');
