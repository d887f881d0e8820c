/** Channels into the database, day by day: what is stored already as it is to be is left alone. */
import type { Database } from 'better-sqlite3';
import { DAY, packDay, packInstants } from './dayBlob.ts';
import { packHours } from './hourBlob.ts';
import type { ChannelToStore } from './houseToStore.ts';
import { type DoubtedReadings, readReadings } from './readingsFile.ts';

type RowNumber = number | bigint;
type ChannelRow = Omit<ChannelToStore, 'path'> & { readonly number: number };

/** One UTC day of a channel as bytes. */
interface DayRow {
  readonly readings: Uint8Array;
  readonly hours: Uint8Array;
  /** Null without a doubted reading. */
  readonly instants: Uint8Array | null;
}

/** What stores the channels of a house, within a transaction of the caller's. */
export function channelWriting(db: Database) {
  const insertChannel = db.prepare(
    `INSERT INTO channel (house, file, column_name, room, place, quantity, spacing_s, first_s, last_s)
     VALUES (@house, @file, @column, @room, @place, @quantity, @spacing, @first, @last)`,
  );
  const updateChannel = db.prepare(
    `UPDATE channel SET room = @room, place = @place, spacing_s = @spacing, first_s = @first, last_s = @last
     WHERE number = @number`,
  );
  const deleteChannel = db.prepare('DELETE FROM channel WHERE number = ?');
  const channelsOf = db.prepare<[RowNumber], ChannelRow>(
    `SELECT number, file, column_name AS "column", room, place, quantity, spacing_s AS spacing,
            first_s AS first, last_s AS last
     FROM channel WHERE house = ? ORDER BY number`,
  );
  const daysOf = db.prepare<[RowNumber], number>('SELECT day FROM day WHERE channel = ?').pluck();
  const dayOf = db.prepare<[RowNumber, number], DayRow>(
    `SELECT readings, hours, instants FROM day JOIN day_readings USING (channel, day)
     LEFT JOIN day_doubts USING (channel, day) WHERE channel = ? AND day = ?`,
  );
  const deleteDay = (['day', 'day_readings', 'day_doubts'] as const).map((table) =>
    db.prepare(`DELETE FROM ${table} WHERE channel = ? AND day = ?`),
  );
  const insertDay = db.prepare(
    'INSERT INTO day (channel, day, n, min, max, sum, hours) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  const insertReadings = db.prepare('INSERT INTO day_readings (channel, day, readings) VALUES (?, ?, ?)');
  const insertDoubts = db.prepare('INSERT INTO day_doubts (channel, day, instants) VALUES (?, ?, ?)');

  function storeDays(channel: RowNumber, path: string): void {
    const gone = new Set(daysOf.all(channel));
    for (const { day, readings } of cutAtMidnights(readReadings(path))) {
      const row = rowOf(readings, day);
      const stored = gone.delete(day) ? dayOf.get(channel, day) : undefined;
      if (stored !== undefined && isSame(row, stored)) continue;
      if (stored !== undefined) for (const statement of deleteDay) statement.run(channel, day);
      const { min, max, sum } = summaryOf(readings.value);
      insertDay.run(channel, day, readings.time.length, min, max, sum, row.hours);
      insertReadings.run(channel, day, row.readings);
      if (row.instants !== null) insertDoubts.run(channel, day, row.instants);
    }
    for (const day of gone) for (const statement of deleteDay) statement.run(channel, day);
  }

  return {
    /** The channels of the house are then these, in their order. */
    storeChannels(house: RowNumber, channels: readonly ChannelToStore[]): void {
      const stored = channelsOf.all(house);
      const kept = keptOf(stored, channels);
      const staying = new Set(kept.values());
      for (const row of stored) if (!staying.has(row)) deleteChannel.run(row.number);
      for (const channel of channels) {
        const { path, ...row } = channel;
        const own = kept.get(channel);
        if (own !== undefined) updateChannel.run({ number: own.number, ...row });
        else if (path === null) throw new Error(`the readings of ${row.file} are not stored`);
        if (path !== null)
          storeDays(own?.number ?? insertChannel.run({ house, ...row }).lastInsertRowid, path);
      }
    },
  };
}

/** Which row each channel stays in. The order of channels is that of their numbers: after one that is new all are. */
function keptOf(
  stored: readonly ChannelRow[],
  channels: readonly ChannelToStore[],
): ReadonlyMap<ChannelToStore, ChannelRow> {
  const kept = new Map<ChannelToStore, ChannelRow>();
  let from = 0;
  for (const channel of channels) {
    const at = stored.findIndex((row, i) => i >= from && isOf(row, channel));
    if (at < 0) break;
    kept.set(channel, stored[at]);
    from = at + 1;
  }
  return kept;
}

const isOf = (row: ChannelRow, { file, column, quantity }: ChannelToStore) =>
  row.file === file && row.column === column && row.quantity === quantity;

function rowOf(readings: DoubtedReadings, day: number): DayRow {
  const { time, doubt } = readings;
  const instants = doubt.some((code) => code !== 0)
    ? packInstants(
        time.filter((_, i) => doubt[i] !== 0),
        day,
      )
    : null;
  return { readings: packDay(readings, day), hours: packHours(readings, day), instants };
}

const isSame = (one: DayRow, other: DayRow) =>
  Buffer.compare(one.readings, other.readings) === 0 &&
  Buffer.compare(one.hours, other.hours) === 0 &&
  Buffer.compare(one.instants ?? NONE, other.instants ?? NONE) === 0;
const NONE = new Uint8Array();

function cutAtMidnights({
  time,
  value,
  doubt,
}: DoubtedReadings): { day: number; readings: DoubtedReadings }[] {
  const days: { day: number; readings: DoubtedReadings }[] = [];
  let from = 0;
  while (from < time.length) {
    const day = Math.floor(time[from] / DAY);
    let to = from + 1;
    while (to < time.length && time[to] < (day + 1) * DAY) to++;
    const cut = {
      time: time.subarray(from, to),
      value: value.subarray(from, to),
      doubt: doubt.subarray(from, to),
    };
    days.push({ day, readings: cut });
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
