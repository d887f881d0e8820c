/** The links of the houses, and until when a house is kept. */
import type { Database } from 'better-sqlite3';
import type { LinkInUse, LinkScope } from '../access/links.ts';

export interface LinkToStore {
  /** SHA-256 of what stands in it. */
  readonly hash: string;
  readonly scope: LinkScope;
  readonly whose: string;
  /** [s] */
  readonly made: number;
  /** [s] */
  readonly until: number;
}

export interface StoredLink extends Omit<LinkToStore, 'hash'> {
  readonly number: number;
}

const HOUSE = '(SELECT number FROM house WHERE id = ?)';

export function linksIn(db: Database) {
  const link = db.prepare<[string], LinkInUse>(
    `SELECT link.number, house.id AS house, scope, until_s AS until
     FROM link JOIN house ON house.number = link.house WHERE hash = ?`,
  );
  const links = db.prepare<[string], StoredLink>(
    `SELECT number, scope, whose, made_s AS made, until_s AS until
     FROM link WHERE house = ${HOUSE} ORDER BY number`,
  );
  const keepUntil = db.prepare<[string], string | null>('SELECT keep_until FROM house WHERE id = ?').pluck();
  return {
    /** Null when it was taken back, or its house deleted; whether it has run out is for the caller to say. */
    link: (hash: string): LinkInUse | null => link.get(hash) ?? null,
    /** The oldest first. */
    links: (id: string): StoredLink[] => links.all(id),
    /** A date; null while nothing was agreed. */
    keepUntil: (id: string): string | null => keepUntil.get(id) ?? null,
  };
}

export function linkWriting(db: Database) {
  const insert = db.prepare(
    `INSERT INTO link (house, hash, scope, whose, made_s, until_s)
     VALUES (${HOUSE}, @hash, @scope, @whose, @made, @until)`,
  );
  const remove = db.prepare(`DELETE FROM link WHERE house = ${HOUSE} AND number = ?`);
  const removeEnded = db.prepare(`DELETE FROM link WHERE house = ${HOUSE} AND until_s <= ?`);
  const keepUntil = db.prepare('UPDATE house SET keep_until = ? WHERE id = ?');
  return {
    /** Those of the house that have run out go at the same time. */
    addLink: db.transaction((id: string, link: LinkToStore): void => {
      removeEnded.run(id, link.made);
      insert.run(id, link);
    }),
    removeLink: (id: string, number: number): void => {
      remove.run(id, number);
    },
    /** @param date null when nothing is agreed any more */
    keepUntil: (id: string, date: string | null): void => {
      keepUntil.run(date, id);
    },
  };
}
