/** Everything that changes the database. Each call is one transaction: it happens wholly or not at all. */
import { readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import type { Message } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { channelWriting } from './channelWriting.ts';
import { HOUSE_CHANGED } from './houseChanged.ts';
import type { HouseToStore } from './houseToStore.ts';

/** What an assessment came to; `answer` and `assessment` as JSON. */
export type Outcome =
  | {
      readonly kind: 'assessed';
      readonly answer: string;
      readonly assessment: string;
      readonly nights: readonly StoredNight[];
    }
  | { readonly kind: 'not assessed'; readonly problems: readonly Message[] }
  | { readonly kind: 'cancelled' };

export type StoredNight = Pick<NightCurve, 'date' | 'sunset' | 'sunrise'> & {
  readonly used: boolean;
  /** A NightCurve as JSON. */
  readonly curve: string;
};

export type Writing = ReturnType<typeof writingTo>;

/** Set with the demonstration house, so that the first start happens once. */
export const DEMONSTRATION_STORED = 'demonstration stored';

export function writingTo(db: Database) {
  const storeChannel = channelWriting(db);
  const insertHouse = db.prepare(
    `INSERT INTO house (id, name, time_zone, invented, content)
     VALUES (@id, @name, @timeZone, @invented, @content)`,
  );
  const updateHouse = db.prepare(
    'UPDATE house SET name = @name, time_zone = @timeZone, content = @content WHERE number = @number',
  );
  const insertVersion = db.prepare('INSERT INTO version (house, kept_s, json) VALUES (?, ?, ?)');
  const deleteLatestVersion = db.prepare(
    'DELETE FROM version WHERE number = (SELECT max(number) FROM version WHERE house = ?)',
  );
  const isStored = db.prepare('SELECT 1 FROM original WHERE sha256 = ?');
  const insertOriginal = db.prepare('INSERT INTO original (sha256, bytes, content) VALUES (?, ?, ?)');
  const deleteUnused = db.prepare('DELETE FROM original WHERE sha256 NOT IN (SELECT sha256 FROM file)');
  const insertFile = db.prepare('INSERT INTO file (version, name, sha256) VALUES (?, ?, ?)');
  const upsertLayout = db.prepare(
    'INSERT OR REPLACE INTO layout (signature, answers, kept_s) VALUES (?, ?, ?)',
  );
  const deleteChannels = db.prepare('DELETE FROM channel WHERE house = ?');
  const insertOnce = db.prepare('INSERT OR IGNORE INTO done_once (what) VALUES (?)');
  const updateAway = db.prepare('UPDATE house SET away = ? WHERE id = ?');
  const deleteHouse = db.prepare('DELETE FROM house WHERE id = ?');
  const houseNumber = db.prepare<[string], { number: number; content: string }>(
    'SELECT number, content FROM house WHERE id = ?',
  );
  const upsertOutcome = db.prepare(
    `INSERT OR REPLACE INTO outcome (house, rests_on, kind, problems, answer, assessment)
     VALUES (@house, @restsOn, @kind, @problems, @answer, @assessment)`,
  );
  const deleteOutcome = db.prepare('DELETE FROM outcome WHERE house = ?');
  const deleteNights = db.prepare('DELETE FROM night WHERE house = ?');
  const insertNight = db.prepare(
    'INSERT INTO night (house, date, sunset_s, sunrise_s, used, curve) VALUES (?, ?, ?, ?, ?, ?)',
  );

  function storeVersion(house: number | bigint, { json, files, layouts }: HouseToStore, kept: number): void {
    const { lastInsertRowid: version } = insertVersion.run(house, kept, json);
    for (const { name, bytes, sha256, path } of files) {
      if (path !== null && isStored.get(sha256) === undefined)
        insertOriginal.run(sha256, bytes, readFileSync(path));
      insertFile.run(version, name, sha256);
    }
    for (const { signature, answers } of layouts) upsertLayout.run(signature, JSON.stringify(answers), kept);
  }

  /** The house of this content, and no other. */
  function found(id: string, content: string): number {
    const house = houseNumber.get(id);
    if (house?.content === content) return house.number;
    throw Object.assign(new Error('the house is not any more what it was'), { code: HOUSE_CHANGED });
  }

  /** What follows from the files is that of the house as it is now; it was not assessed yet. */
  function replaceReadings(number: number, { name, timeZone, content, channels }: HouseToStore): void {
    updateHouse.run({ number, name, timeZone, content });
    deleteOutcome.run(number);
    deleteNights.run(number);
    deleteChannels.run(number);
    for (const channel of channels) storeChannel(number, channel);
  }

  return {
    /**
     * Stores a whole house or nothing.
     *
     * @param kept when [s]
     */
    keepHouse: db.transaction((id: string, house: HouseToStore, invented: boolean, kept: number): void => {
      const { name, timeZone, content } = house;
      const { lastInsertRowid: number } = insertHouse.run({
        id,
        name,
        timeZone,
        content,
        invented: invented ? 1 : 0,
      });
      storeVersion(number, house, kept);
      for (const channel of house.channels) storeChannel(number, channel);
      if (invented) insertOnce.run(DEMONSTRATION_STORED);
    }),

    /**
     * Makes another version of a house: it is then what was brought onto it.
     *
     * @param was its content, on which the new one rests
     * @throws Error with the code HOUSE_CHANGED when that is not its content any more
     */
    addVersion: db.transaction((id: string, was: string, house: HouseToStore, kept: number): void => {
      const number = found(id, was);
      storeVersion(number, house, kept);
      replaceReadings(number, house);
    }),

    /**
     * Takes the latest version of a house back.
     *
     * @param was its content until now
     * @param house the version before
     * @throws Error with the code HOUSE_CHANGED when that is not its content any more
     */
    undoVersion: db.transaction((id: string, was: string, house: HouseToStore): void => {
      const number = found(id, was);
      deleteLatestVersion.run(number);
      deleteUnused.run();
      replaceReadings(number, house);
    }),

    putAway: (id: string, away: boolean): void => {
      updateAway.run(away ? 1 : 0, id);
    },

    /** Deletes the house with its readings and results, and those of its files that no other house has. */
    deleteHouse: db.transaction((id: string): void => {
      deleteHouse.run(id);
      deleteUnused.run();
    }),

    /** Replaces the outcome of a house; of a house that is gone nothing is stored. */
    storeOutcome: db.transaction((id: string, restsOn: string, outcome: Outcome): void => {
      const house = houseNumber.get(id)?.number;
      if (house === undefined) return;
      const assessed = outcome.kind === 'assessed' ? outcome : null;
      upsertOutcome.run({
        house,
        restsOn,
        kind: outcome.kind,
        problems: outcome.kind === 'not assessed' ? JSON.stringify(outcome.problems) : null,
        answer: assessed?.answer ?? null,
        assessment: assessed?.assessment ?? null,
      });
      deleteNights.run(house);
      for (const { date, sunset, sunrise, used, curve } of assessed?.nights ?? [])
        insertNight.run(house, date, sunset, sunrise, used ? 1 : 0, curve);
    }),
  };
}
