/** The backup of a database before its layout is changed: one, the latest, beside the file. */
import { readdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { copyWhole } from './wholeCopy.ts';

/**
 * "stillwarm.sqlite" of layout 2 -> "stillwarm.sqlite before layout 3". Earlier ones go once the new one is there:
 * what was deleted since is not kept in them for ever.
 *
 * @param layout that the database has now
 */
export function backupBeforeMigration(db: Database, path: string, layout: number): void {
  const folder = dirname(path);
  const prefix = `${basename(path)} before layout `;
  const name = `${prefix}${layout + 1}`;
  copyWhole(db, join(folder, name));
  for (const other of readdirSync(folder))
    if (other.startsWith(prefix) && /^\d+$/.test(other.slice(prefix.length)) && other !== name)
      rmSync(join(folder, other));
}
