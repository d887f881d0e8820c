/** Everything that changes the database. Each call is one transaction: it happens wholly or not at all. */
import { readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import type { Message } from '../../src/assessment.ts';
import { channelWriting } from './channelWriting.ts';
import { HOUSE_CHANGED } from './houseChanged.ts';
import type { HouseToStore } from './houseToStore.ts';
import { linkWriting } from './links.ts';
import { type Outcome, outcomesIn } from './outcomes.ts';

export type Writing = ReturnType<typeof writingTo>;

/** Set with the demonstration house, so that the first start happens once. */
export const DEMONSTRATION_STORED = 'demonstration stored';

export function writingTo(db: Database) {
  const { storeChannels } = channelWriting(db);
  const outcomes = outcomesIn(db);
  const insertHouse = db.prepare(
    `INSERT INTO house (id, name, time_zone, invented, content, figures)
     VALUES (@id, @name, @timeZone, @invented, @content, @figures)`,
  );
  const updateHouse = db.prepare(
    `UPDATE house SET name = @name, time_zone = @timeZone, content = @content, figures = @figures
     WHERE number = @number`,
  );
  const insertVersion = db.prepare(
    'INSERT INTO version (house, kept_s, json, posted_day) VALUES (?, ?, ?, ?)',
  );
  const latestPosted = db
    .prepare<[number | bigint], number | null>(
      'SELECT posted_day FROM version WHERE house = ? ORDER BY number DESC LIMIT 1',
    )
    .pluck();
  const deleteLatestVersion = db.prepare(
    'DELETE FROM version WHERE number = (SELECT max(number) FROM version WHERE house = ?)',
  );
  const isStored = db.prepare('SELECT 1 FROM original WHERE sha256 = ?');
  const insertOriginal = db.prepare('INSERT INTO original (sha256, bytes, content) VALUES (?, ?, ?)');
  const deleteUnused = db.prepare(
    'DELETE FROM original WHERE NOT EXISTS (SELECT 1 FROM file WHERE file.sha256 = original.sha256)',
  );
  const insertFile = db.prepare('INSERT INTO file (version, name, sha256) VALUES (?, ?, ?)');
  const upsertLayout = db.prepare(
    'INSERT OR REPLACE INTO layout (signature, answers, kept_s) VALUES (?, ?, ?)',
  );
  const insertOnce = db.prepare('INSERT OR IGNORE INTO done_once (what) VALUES (?)');
  const updateAway = db.prepare('UPDATE house SET away = ? WHERE id = ?');
  const deleteHouse = db.prepare('DELETE FROM house WHERE id = ?');
  const deleteLayouts = db.prepare(
    `DELETE FROM layout WHERE kept_s IN
     (SELECT kept_s FROM version WHERE house = (SELECT number FROM house WHERE id = ?))`,
  );
  const houseRow = db.prepare<[string], HouseRow>(
    'SELECT number, name, content, figures FROM house WHERE id = ?',
  );
  const upsertWatched = db.prepare('INSERT OR REPLACE INTO watched (path, stamp, problems) VALUES (?, ?, ?)');
  const deleteWatched = db.prepare('DELETE FROM watched WHERE path = ?');

  function storeVersion(
    house: number | bigint,
    { json, files, layouts }: HouseToStore,
    kept: number,
    posted: number | null,
  ): void {
    const { lastInsertRowid: version } = insertVersion.run(house, kept, json, posted);
    for (const { name, bytes, sha256, path } of files) {
      if (path !== null && isStored.get(sha256) === undefined)
        insertOriginal.run(sha256, bytes, readFileSync(path));
      insertFile.run(version, name, sha256);
    }
    for (const { signature, answers } of layouts) upsertLayout.run(signature, JSON.stringify(answers), kept);
  }

  /** The house of this content, and no other. */
  function found(id: string, content: string): HouseRow {
    const house = houseRow.get(id);
    if (house?.content === content) return house;
    throw Object.assign(new Error('the house is not any more what it was'), { code: HOUSE_CHANGED });
  }

  /** What follows from the files is that of the house as it is now; only what changes with it is made anew. */
  function replace({ number, figures: were }: HouseRow, house: HouseToStore): void {
    const { name, timeZone, content, figures, channels } = house;
    updateHouse.run({ number, name, timeZone, content, figures });
    if (figures === were) outcomes.rename(number, name);
    else outcomes.setAside(number);
    if (channels !== null) storeChannels(number, channels);
  }

  const removeWhole = db.transaction((id: string): void => {
    deleteLayouts.run(id); // how its logs were read: they were kept in the same moment
    deleteHouse.run(id);
    deleteUnused.run();
  });

  return {
    /**
     * Stores a whole house or nothing.
     *
     * @param kept when [s]
     */
    keepHouse: db.transaction((id: string, house: HouseToStore, invented: boolean, kept: number): void => {
      const { name, timeZone, content, figures } = house;
      const { lastInsertRowid: number } = insertHouse.run({
        id,
        name,
        timeZone,
        content,
        figures,
        invented: invented ? 1 : 0,
      });
      storeVersion(number, house, kept, null);
      storeChannels(number, house.channels ?? []);
      if (invented) insertOnce.run(DEMONSTRATION_STORED);
    }),

    /**
     * Makes another version of a house: it is then what was brought onto it. One that was posted takes the place of
     * the latest, if that was posted on the same day.
     *
     * @param was    its content, on which the new one rests
     * @param posted the UTC day (days since 1970) on which it was posted; null when it was not
     * @throws Error with the code HOUSE_CHANGED when that is not its content any more
     */
    addVersion: db.transaction(
      (id: string, was: string, house: HouseToStore, kept: number, posted: number | null = null): void => {
        const before = found(id, was);
        const isMore = posted !== null && latestPosted.get(before.number) === posted;
        if (isMore) deleteLatestVersion.run(before.number);
        storeVersion(before.number, house, kept, posted);
        if (isMore) deleteUnused.run();
        replace(before, house);
      },
    ),

    /**
     * Takes the latest version of a house back.
     *
     * @param was its content until now
     * @param house the version before
     * @throws Error with the code HOUSE_CHANGED when that is not its content any more
     */
    undoVersion: db.transaction((id: string, was: string, house: HouseToStore): void => {
      const before = found(id, was);
      deleteLatestVersion.run(before.number);
      deleteUnused.run();
      replace(before, house);
    }),

    ...linkWriting(db),

    putAway: (id: string, away: boolean): void => {
      updateAway.run(away ? 1 : 0, id);
    },

    /** Deletes the house with its readings, results and links, and those of its files that no other house has. */
    deleteHouse: (id: string): void => {
      removeWhole(id);
      // What was in it is overwritten in the file, and does not stay in the log of changes either.
      db.pragma('wal_checkpoint(TRUNCATE)');
    },

    /** Replaces the outcome of a house; of a house that is gone nothing is stored. */
    storeOutcome: db.transaction((id: string, restsOn: string, outcome: Outcome): void => {
      const house = houseRow.get(id);
      if (house !== undefined) outcomes.store(house.number, house.name, restsOn, outcome);
    }),

    /** Makes the result that a house had when it rested on this its outcome again; nothing when there is none. */
    takeUpResult: db.transaction((id: string, restsOn: string): void => {
      const house = houseRow.get(id);
      if (house !== undefined) outcomes.takeUp(house.number, house.name, restsOn);
    }),

    /** A file of the watched folder was dealt with: taken, or what is wrong with it. */
    noteWatched: (path: string, stamp: string, problems: readonly Message[]): void => {
      upsertWatched.run(path, stamp, JSON.stringify(problems));
    },
    forgetWatched: (path: string): void => {
      deleteWatched.run(path);
    },
  };
}

interface HouseRow {
  readonly number: number;
  readonly name: string;
  readonly content: string;
  readonly figures: string;
}
