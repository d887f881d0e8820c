/** One channel into the database, day by day. */
import type { Database } from 'better-sqlite3';
import { DAY, packDay, packInstants } from './dayBlob.ts';
import { packHours } from './hourBlob.ts';
import type { ChannelToStore } from './houseToStore.ts';
import { type DoubtedReadings, readReadings } from './readingsFile.ts';

/** What stores a channel of the house of this number, within a transaction of the caller's. */
export function channelWriting(db: Database) {
  const insertChannel = db.prepare(
    `INSERT INTO channel (house, file, column_name, room, place, quantity, spacing_s, first_s, last_s)
     VALUES (@house, @file, @column, @room, @place, @quantity, @spacing, @first, @last)`,
  );
  const insertDay = db.prepare(
    'INSERT INTO day (channel, day, n, min, max, sum, hours) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  const insertReadings = db.prepare('INSERT INTO day_readings (channel, day, readings) VALUES (?, ?, ?)');
  const insertDoubts = db.prepare('INSERT INTO day_doubts (channel, day, instants) VALUES (?, ?, ?)');

  return (house: number | bigint, channel: ChannelToStore): void => {
    const { path, ...row } = channel;
    const { lastInsertRowid: number } = insertChannel.run({ house, ...row });
    for (const { day, readings } of daysOf(readReadings(path))) {
      const { min, max, sum } = summaryOf(readings.value);
      const hours = packHours(readings, day);
      insertDay.run(number, day, readings.time.length, min, max, sum, hours);
      insertReadings.run(number, day, packDay(readings, day));
      const doubted = readings.time.filter((_, i) => readings.doubt[i] !== 0);
      if (doubted.length > 0) insertDoubts.run(number, day, packInstants(doubted, day));
    }
  };
}

/** A channel cut at UTC midnights. */
function daysOf({ time, value, doubt }: DoubtedReadings): { day: number; readings: DoubtedReadings }[] {
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
