/** A copy of the whole database as one file, of one moment, made while others read and write. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Database } from 'better-sqlite3';
import { assertSound } from './soundness.ts';

/**
 * The file appears whole, sound and on the disk, or not at all; one that is there is replaced. `VACUUM INTO` takes all from
 * one snapshot: unlike the page by page backup it never begins anew, however much is written meanwhile.
 *
 * @throws DamagedDatabase, Error of the file system or the database; what was at the path before is then still there
 */
export function copyWhole(db: Database, path: string): void {
  const half = `${path}.${process.pid}.part`;
  try {
    rmSync(half, { force: true });
    db.prepare('VACUUM INTO ?').run(half);
    assertSound(half);
    fileToDisk(half);
    renameSync(half, path);
    folderToDisk(dirname(path));
  } catch (error) {
    rmSync(half, { force: true });
    throw error;
  }
}

/** Makes sure that what was written to a file survives a loss of power. */
export const fileToDisk = (path: string): void => sync(path, 'r+');

/** The same of the names in a folder; not every system has that. */
export function folderToDisk(path: string): void {
  if (process.platform !== 'win32') sync(path, 'r');
}

function sync(path: string, flags: 'r' | 'r+'): void {
  const file = openSync(path, flags);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
