/** Everything that changes the database. Each call is one transaction: it happens wholly or not at all. */
import { readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import type { Message } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { DAY, packDay, type Readings } from './dayBlob.ts';
import { packHours } from './hourBlob.ts';
import type { ChannelToStore, HouseToStore } from './houseToStore.ts';
import { readReadings } from './readingsFile.ts';

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
  const insertHouse = db.prepare(
    `INSERT INTO house (id, name, time_zone, json, invented, content)
     VALUES (@id, @name, @timeZone, @json, @invented, @content)`,
  );
  const insertFile = db.prepare(
    'INSERT INTO file (house, name, bytes, sha256, content) VALUES (?, ?, ?, ?, ?)',
  );
  const insertChannel = db.prepare(
    `INSERT INTO channel (house, file, column_name, room, place, quantity, spacing_s, first_s, last_s)
     VALUES (@house, @file, @column, @room, @place, @quantity, @spacing, @first, @last)`,
  );
  const insertDay = db.prepare(
    'INSERT INTO day (channel, day, n, min, max, sum, hours) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  const insertReadings = db.prepare('INSERT INTO day_readings (channel, day, readings) VALUES (?, ?, ?)');
  const insertOnce = db.prepare('INSERT OR IGNORE INTO done_once (what) VALUES (?)');
  const updateAway = db.prepare('UPDATE house SET away = ? WHERE id = ?');
  const deleteHouse = db.prepare('DELETE FROM house WHERE id = ?');
  const houseNumber = db.prepare<[string], { number: number }>('SELECT number FROM house WHERE id = ?');
  const upsertOutcome = db.prepare(
    `INSERT OR REPLACE INTO outcome (house, rests_on, kind, problems, answer, assessment)
     VALUES (@house, @restsOn, @kind, @problems, @answer, @assessment)`,
  );
  const deleteNights = db.prepare('DELETE FROM night WHERE house = ?');
  const insertNight = db.prepare(
    'INSERT INTO night (house, date, sunset_s, sunrise_s, used, curve) VALUES (?, ?, ?, ?, ?, ?)',
  );

  function storeChannel(house: number | bigint, channel: ChannelToStore): void {
    const { path, ...row } = channel;
    const { lastInsertRowid: number } = insertChannel.run({ house, ...row });
    for (const { day, readings } of daysOf(readReadings(path))) {
      const { min, max, sum } = summaryOf(readings.value);
      const hours = packHours(readings, day);
      insertDay.run(number, day, readings.time.length, min, max, sum, hours);
      insertReadings.run(number, day, packDay(readings, day));
    }
  }

  return {
    /** Stores a whole house or nothing. */
    keepHouse: db.transaction((id: string, house: HouseToStore, invented: boolean): void => {
      const { files, channels, ...row } = house;
      const { lastInsertRowid: number } = insertHouse.run({ ...row, id, invented: invented ? 1 : 0 });
      for (const { name, bytes, sha256, path } of files)
        insertFile.run(number, name, bytes, sha256, readFileSync(path));
      for (const channel of channels) storeChannel(number, channel);
      if (invented) insertOnce.run(DEMONSTRATION_STORED);
    }),

    putAway: (id: string, away: boolean): void => {
      updateAway.run(away ? 1 : 0, id);
    },

    /** Deletes the house with its files, readings and results. */
    deleteHouse: (id: string): void => {
      deleteHouse.run(id);
    },

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

/** A channel cut at UTC midnights. */
function daysOf({ time, value }: Readings): { day: number; readings: Readings }[] {
  const days: { day: number; readings: Readings }[] = [];
  let from = 0;
  while (from < time.length) {
    const day = Math.floor(time[from] / DAY);
    let to = from + 1;
    while (to < time.length && time[to] < (day + 1) * DAY) to++;
    days.push({ day, readings: { time: time.subarray(from, to), value: value.subarray(from, to) } });
    from = to;
  }
  return days;
}

function summaryOf(value: Float64Array): { min: number; max: number; sum: number } {
  let [min, max, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const v of value) {
    if (v < min) min = v;
    if (v > max) max = v;
    sum += v;
  }
  return { min, max, sum };
}
