/** Everything that is read from the database; rows become objects here. */
import type { Database } from 'better-sqlite3';
import type { Message, Quantity } from '../../src/assessment.ts';
import type { ReadingAnswers } from '../api/shapes.ts';
import { DAY, type Readings, unpackDay, unpackDays, unpackInstants } from './dayBlob.ts';
import { type Extremes, type HourSummary, hourExtremes, unpackHours } from './hourBlob.ts';
import type { ChannelToStore } from './houseToStore.ts';
import { linksIn } from './links.ts';
import { versionsIn } from './versions.ts';
import { DEMONSTRATION_STORED } from './writing.ts';

export interface StoredHouse {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  readonly invented: boolean;
  readonly away: boolean;
  readonly content: string;
  /** What the figures rest on; see contentOf.ts. */
  readonly figures: string;
  /** [s]; null when no file could be read. */
  readonly lastReading: number | null;
  /** The last assessment; null when there was none. Its answer is JSON. */
  readonly outcome: {
    readonly restsOn: string;
    readonly kind: 'assessed' | 'not assessed' | 'cancelled';
    readonly problems: readonly Message[];
    readonly answer: string | null;
  } | null;
}

export interface StoredChannel {
  readonly number: number;
  readonly file: string;
  readonly column: string;
  readonly room: string | null;
  readonly place: ChannelToStore['place'];
  readonly quantity: Quantity;
  readonly spacing: number;
  readonly first: number;
  readonly last: number;
}

export interface WatchedFile {
  /** Below the watched folder. */
  readonly path: string;
  /** Its size and time of change as it then was. */
  readonly stamp: string;
  readonly problems: readonly Message[];
}

interface HouseRow {
  id: string;
  name: string;
  time_zone: string;
  invented: number;
  away: number;
  content: string;
  figures: string;
  last_s: number | null;
  rests_on: string | null;
  kind: 'assessed' | 'not assessed' | 'cancelled' | null;
  problems: string | null;
  answer: string | null;
}

const HOUSES = `
  SELECT id, name, time_zone, invented, away, content, figures, rests_on, kind, problems, answer,
         (SELECT max(last_s) FROM channel WHERE channel.house = house.number) AS last_s
  FROM house LEFT JOIN outcome ON outcome.house = house.number`;
const NUMBER = '(SELECT number FROM house WHERE id = ?)';

export type Reading = ReturnType<typeof readingFrom>;

export function readingFrom(db: Database) {
  const houses = db.prepare<[], HouseRow>(`${HOUSES} ORDER BY number`);
  const house = db.prepare<[string], HouseRow>(`${HOUSES} WHERE id = ?`);
  const invented = db.prepare<[], { id: string }>('SELECT id FROM house WHERE invented = 1');
  const assessment = db.prepare<[string], { assessment: string | null }>(
    `SELECT assessment FROM outcome WHERE house = ${NUMBER}`,
  );
  const isAssessed = db
    .prepare<[string], number>(`SELECT 1 FROM outcome WHERE house = ${NUMBER} AND assessment IS NOT NULL`)
    .pluck();
  const channels = db.prepare<[string], StoredChannel>(
    `SELECT number, file, column_name AS "column", room, place, quantity, spacing_s AS spacing,
            first_s AS first, last_s AS last
     FROM channel WHERE house = ${NUMBER} ORDER BY number`,
  );
  const days = db.prepare<[number, number, number], { day: number; readings: Buffer }>(
    'SELECT day, readings FROM day_readings WHERE channel = ? AND day BETWEEN ? AND ? ORDER BY day',
  );
  const doubts = db.prepare<[number, number, number], { day: number; instants: Buffer }>(
    'SELECT day, instants FROM day_doubts WHERE channel = ? AND day BETWEEN ? AND ? ORDER BY day',
  );
  const hours = db.prepare<[number, number, number], { day: number; hours: Buffer }>(
    'SELECT day, hours FROM day WHERE channel = ? AND day BETWEEN ? AND ? ORDER BY day',
  );
  const daySummaries = db
    .prepare<[number, number, number], [day: number, min: number, max: number]>(
      'SELECT day, min, max FROM day WHERE channel = ? AND day BETWEEN ? AND ? ORDER BY day',
    )
    .raw();
  const dayNumbers = db
    .prepare<[number], number>('SELECT day FROM day WHERE channel = ? ORDER BY day')
    .pluck();
  const neighbours = db.prepare<
    [number, number, number, number],
    { before: number | null; after: number | null }
  >(
    `SELECT (SELECT max(day) FROM day WHERE channel = ? AND day < ?) AS before,
            (SELECT min(day) FROM day WHERE channel = ? AND day > ?) AS after`,
  );
  const nights = db.prepare<
    [string, number, number],
    { date: string; sunset: number; sunrise: number; used: number }
  >(
    `SELECT date, sunset_s AS sunset, sunrise_s AS sunrise, used FROM night
     WHERE house = ${NUMBER} AND sunrise_s >= ? AND sunset_s <= ? ORDER BY sunset_s`,
  );
  const curves = db.prepare<[string], { curve: string }>(
    `SELECT curve FROM night WHERE house = ${NUMBER} ORDER BY sunset_s`,
  );
  const former = db
    .prepare<[string, string], number>(`SELECT 1 FROM former_result WHERE house = ${NUMBER} AND rests_on = ?`)
    .pluck();
  const watched = db.prepare<[], { path: string; stamp: string; problems: string }>(
    'SELECT path, stamp, problems FROM watched ORDER BY path',
  );
  const layout = db.prepare<[string], string>('SELECT answers FROM layout WHERE signature = ?').pluck();
  const once = db.prepare<[string], { what: string }>('SELECT what FROM done_once WHERE what = ?');

  /** The days between two instants, and the next with readings to either side. */
  const dayRange = (channel: number, from: number, to: number): [number, number] => {
    const [first, last] = [Math.floor(from / DAY), Math.floor(to / DAY)];
    const near = neighbours.get(channel, first, channel, last);
    return [near?.before ?? first, near?.after ?? last];
  };

  return {
    ...versionsIn(db),
    ...linksIn(db),
    houses: () => houses.all().map(storedHouse),
    house: (id: string) => {
      const row = house.get(id);
      return row === undefined ? null : storedHouse(row);
    },
    /** The demonstration house, wherever it is put; null when it was deleted or never stored. */
    demonstration: () => invented.get()?.id ?? null,
    demonstrationWasStored: () => once.get(DEMONSTRATION_STORED) !== undefined,
    isAssessed: (id: string) => isAssessed.get(id) !== undefined,
    /** JSON; null when not assessed. */
    assessment: (id: string) => assessment.get(id)?.assessment ?? null,
    /** Whether there is a result of the house as it was when it rested on this. */
    hasFormerResult: (id: string, restsOn: string) => former.get(id, restsOn) !== undefined,
    /** The files of the watched folder that were dealt with; without problems when they were taken. */
    watched: (): WatchedFile[] =>
      watched.all().map((row) => ({ ...row, problems: JSON.parse(row.problems) as Message[] })),
    channels: (id: string) => channels.all(id),
    /** The readings of the days from one instant to another and of the nearest day to either side. */
    readings: (channel: number, from: number, to: number): Readings[] =>
      days.all(channel, ...dayRange(channel, from, to)).map((row) => unpackDay(row.readings, row.day)),
    /** The same as one series. */
    series: (channel: number, from: number, to: number): Readings =>
      unpackDays(days.all(channel, ...dayRange(channel, from, to))),
    /** The UTC days (days since 1970) with readings, rising. */
    daysOf: (channel: number) => dayNumbers.all(channel),
    /** The readings of one of them; none on another. */
    day: (channel: number, day: number): Readings =>
      unpackDay(days.get(channel, day, day)?.readings ?? new Uint8Array(), day),
    /** Those of the days between two instants, as hourly summaries. */
    hours: (channel: number, from: number, to: number): HourSummary[] =>
      hours.all(channel, ...dayRange(channel, from, to)).flatMap((row) => unpackHours(row.hours, row.day)),
    /** The same, as the least and greatest of each hour or UTC day. */
    hourExtremes: (channel: number, from: number, to: number): Extremes =>
      hourExtremes(hours.all(channel, ...dayRange(channel, from, to))),
    dayExtremes: (channel: number, from: number, to: number): Extremes =>
      dayExtremesOf(daySummaries.all(channel, ...dayRange(channel, from, to))),
    /** The instants from one to another at which a reading is doubted, in the order of time [s]. */
    *doubted(channel: number, from: number, to: number): Iterable<number> {
      for (const { day, instants } of doubts.iterate(channel, Math.floor(from / DAY), Math.floor(to / DAY)))
        yield* unpackInstants(instants, day).filter((t) => t >= from && t <= to);
    },
    /** How a log of this layout was last read; null when none was kept. */
    layout(signature: string): ReadingAnswers | null {
      const answers = layout.get(signature);
      return answers === undefined ? null : JSON.parse(answers);
    },
    nights: (id: string, from: number, to: number) =>
      nights.all(id, from, to).map((night) => ({ ...night, used: night.used === 1 })),
    /** JSON of each night's curve, in the order of time. */
    curves: (id: string) => curves.all(id).map(({ curve }) => curve),
  };
}

const dayExtremesOf = (days: readonly [day: number, min: number, max: number][]): Extremes => ({
  start: Float64Array.from(days, ([day]) => day * DAY),
  min: Float64Array.from(days, ([, min]) => min),
  max: Float64Array.from(days, ([, , max]) => max),
});

function storedHouse(row: HouseRow): StoredHouse {
  const { id, name, content, figures } = row;
  return {
    id,
    name,
    content,
    figures,
    timeZone: row.time_zone,
    invented: row.invented === 1,
    away: row.away === 1,
    lastReading: row.last_s,
    outcome:
      row.kind === null || row.rests_on === null
        ? null
        : {
            restsOn: row.rests_on,
            kind: row.kind,
            problems: row.problems === null ? [] : JSON.parse(row.problems),
            answer: row.answer,
          },
  };
}
