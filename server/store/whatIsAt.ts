/** What a file is to us, told without changing it. */
import { existsSync } from 'node:fs';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { migrations } from './migrations/index.ts';

export type FoundFile =
  /** Ours; layout 0 has nothing in it yet. */
  | { readonly kind: 'ours'; readonly layout: number }
  | { readonly kind: 'newer'; readonly layout: number }
  | { readonly kind: 'no database' }
  | { readonly kind: 'of another program' };

/** How long to wait for whoever writes [ms]. */
const BUSY = 5000;

/**
 * A change that was broken off is taken back first, which SQLite does by itself where it may write.
 *
 * @throws SqliteError when the file cannot be read for another reason, or is damaged where it says what it is
 */
export function whatIsAt(path: string): FoundFile {
  const readonly = !existsSync(`${path}-journal`);
  const db = new Sqlite(path, { readonly, fileMustExist: true, timeout: BUSY });
  try {
    const layout = Number(db.pragma('user_version', { simple: true }));
    if (layout > migrations.length) return { kind: 'newer', layout };
    const tables = db
      .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'")
      .pluck()
      .all();
    const ours =
      layout === 0 ? tables.length === 0 : tables.includes('house') && tables.includes('done_once');
    return ours ? { kind: 'ours', layout } : { kind: 'of another program' };
  } catch (error) {
    if (error instanceof SqliteError && error.code === 'SQLITE_NOTADB') return { kind: 'no database' };
    throw error;
  } finally {
    db.close();
  }
}
