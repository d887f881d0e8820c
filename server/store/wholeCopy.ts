/** A copy of the whole database as one file, of one moment, made while others read and write. */
import { closeSync, fsyncSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { assertSound } from './soundness.ts';

/**
 * The file appears whole, sound and on the disk, or not at all; one that is there is replaced. `VACUUM INTO` takes all from
 * one snapshot: unlike the page by page backup it never begins anew, however much is written meanwhile.
 *
 * @throws DamagedDatabase, Error of the file system or the database; what was at the path before is then still there
 */
export function copyWhole(db: Database, path: string): void {
  const half = halfOf(path);
  try {
    removeHalves(path);
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

/** Where a file is made before it is whole. */
export const halfOf = (path: string): string => `${path}.${process.pid}.part`;

/** What was left half made of a file by a process that was killed: people's readings, which nobody would ever delete. */
export function removeHalves(path: string): void {
  const [folder, prefix] = [dirname(path), `${basename(path)}.`];
  for (const name of readdirSync(folder)) {
    if (!name.startsWith(prefix)) continue;
    const [, pid] = /^(\d+)\.part(-journal|-wal|-shm)?$/.exec(name.slice(prefix.length)) ?? [];
    if (pid !== undefined && !isAnotherOne(Number(pid))) rmSync(join(folder, name), { force: true });
  }
}

/** Whether a process runs that is not this one. */
function isAnotherOne(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
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
