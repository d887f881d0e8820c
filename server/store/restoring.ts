/** A backup put in the place of the database: checked first, and the database that was there put aside. */
import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { DATABASE_FILE } from './database.ts';
import { FolderInUse, takeForItself } from './soleUse.ts';
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
  /** Another program has the folder or the database open: which one, as far as is known. */
  | { readonly kind: 'in use'; readonly by: string };

/** How long to wait for a program that is about to close the database [ms]. */
const PATIENCE = 1000;

/** How the names of the databases begin that were put aside. */
const ASIDE = 'stillwarm before restoring ';

/**
 * @param now in the name of what is put aside
 * @throws Error of the file system; what was in the folder is then as it was
 */
export function restoreInto(folder: string, backup: string, now: Date): Restored {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const database = join(folder, DATABASE_FILE);
  if (!statSync(backup).isFile()) return { kind: 'no backup' };
  if (isSameFile(backup, database)) return { kind: 'the database itself' };
  const half = halfOf(database);
  try {
    removeHalves(database);
    copyFileSync(backup, half);
    const refusal = whyNo(half);
    if (refusal !== null) return refusal;
    fileToDisk(half);
    const letGo = takeForItself(folder, 'a restore', now);
    try {
      return putInPlace(folder, half, now);
    } finally {
      letGo();
    }
  } catch (error) {
    if (error instanceof FolderInUse) return { kind: 'in use', by: error.by };
    throw error;
  } finally {
    for (const end of ['', '-wal', '-shm']) rmSync(`${half}${end}`, { force: true });
  }
}

function putInPlace(folder: string, restored: string, now: Date): Restored {
  removeAliases(folder);
  const database = join(folder, DATABASE_FILE);
  const aside = freeAside(folder, now);
  if (!existsSync(database)) {
    moveLogs(database, aside); // of one that was taken away
    renameSync(restored, database);
    folderToDisk(folder);
    return { kind: 'restored', aside: null };
  }
  try {
    return insteadOf(database, restored, aside)
      ? { kind: 'restored', aside }
      : { kind: 'in use', by: 'another program' };
  } catch (error) {
    removeAliases(folder);
    throw error;
  }
}

/** What a restoring that was killed left behind; the folder is nobody else's meanwhile. */
export function removeUnfinished(folder: string): void {
  removeHalves(join(folder, DATABASE_FILE));
  removeAliases(folder);
}

/** A database that was about to be put aside and is in its place still, and a copy of it that was only half made. */
function removeAliases(folder: string): void {
  const database = join(folder, DATABASE_FILE);
  for (const name of readdirSync(folder).filter((it) => it.startsWith(ASIDE))) {
    const aside = join(folder, name);
    if (name.endsWith('.part')) rmSync(aside);
    else if (isSameFile(aside, database)) {
      moveLogs(aside, database);
      rmSync(aside);
    }
  }
}

/** Whether two paths are names of one file. */
function isSameFile(one: string, other: string): boolean {
  if (!existsSync(one) || !existsSync(other)) return false;
  if (realpathSync(one) === realpathSync(other)) return true;
  const [a, b] = [one, other].map((it) => statSync(it, { bigint: true }));
  // Some network drives number no file, but know of no second names either.
  return a.nlink > 1n && a.ino === b.ino && a.dev === b.dev;
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
  if (!isFree(database)) return false;
  linkOrCopy(database, aside);
  moveLogs(database, aside); // only a damaged one still has any by now
  rmSync(`${database}-shm`, { force: true });
  renameSync(restored, database);
  folderToDisk(dirname(database));
  return true;
}

/** Whether nobody has the database open; its log of changes is then in the file. One that is damaged keeps nobody out. */
function isFree(database: string): boolean {
  const db = new Sqlite(database, { timeout: PATIENCE });
  try {
    db.pragma('journal_mode = DELETE'); // takes the log of changes into the file, and needs it for itself
    db.exec('BEGIN EXCLUSIVE');
    return true;
  } catch (error) {
    if (error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY')) return false;
    if (isDamage(error)) return true;
    throw error;
  } finally {
    db.close(); // Windows replaces no file that is open; the folder is still ours
  }
}

/** The logs of changes of one database become those of another: left beside the wrong one, they would spoil it. */
function moveLogs(from: string, to: string): void {
  for (const end of ['-wal', '-journal'])
    if (existsSync(`${from}${end}`)) renameSync(`${from}${end}`, `${to}${end}`);
}

function linkOrCopy(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch {
    // A file system without links.
    const half = halfOf(to);
    copyFileSync(from, half);
    fileToDisk(half);
    renameSync(half, to);
  }
}

function freeAside(folder: string, now: Date): string {
  for (let number = 1; ; number++) {
    const again = number === 1 ? '' : ` (${number})`;
    const path = join(folder, `${ASIDE}${stamp(now)}${again}.sqlite`);
    if (!existsSync(path)) return path;
  }
}

/** "2027-01-02 12.30.05", in UTC: a name on every system. */
const stamp = (now: Date) => now.toISOString().slice(0, 19).replace('T', ' ').replaceAll(':', '.');
