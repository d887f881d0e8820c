/** The invented house of loggers in a database of ours, and what is imported beside it. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE_FILE, openForWriting } from '../../../server/store/database.ts';
import type { ChannelToStore, HouseToStore } from '../../../server/store/houseToStore.ts';
import { writeReadings } from '../../../server/store/readingsFile.ts';
import { writingTo } from '../../../server/store/writing.ts';
import { type InventedHouse, MINUTES_A_DAY, readingsOf, START } from '../house/inventedHouse.ts';

export const HOUSE = 'house-of-the-bench';

/** Stores the house in a new database of this folder. */
export function store(folder: string, house: InventedHouse): void {
  const db = openForWriting(join(folder, DATABASE_FILE));
  writingTo(db).keepHouse(HOUSE, toStore(join(folder, 'kept'), house), false, START);
  db.close();
}

/** A house that waits beside it to be imported. */
export function layOut(folder: string, house: InventedHouse): void {
  const { json, ...rest } = toStore(join(folder, 'import'), house);
  writeFileSync(
    join(folder, 'import.json'),
    JSON.stringify({ ...rest, json: new TextDecoder().decode(json) }),
  );
}

export function laidOut(folder: string): HouseToStore {
  const { json, ...rest } = JSON.parse(readFileSync(join(folder, 'import.json'), 'utf8'));
  return { ...rest, json: new TextEncoder().encode(json) };
}

/** The house as it waits to be stored: its readings lie in the folder. */
export function toStore(folder: string, house: InventedHouse): HouseToStore {
  mkdirSync(folder, { recursive: true });
  const time = Float64Array.from({ length: house.days * MINUTES_A_DAY }, (_, i) => START + 60 * i);
  const channels: ChannelToStore[] = [];
  for (const { temperature, humidity } of readingsOf(house)) {
    const file = `logger-${1 + channels.length / 2}.csv`;
    const keep = (quantity: 'temperature' | 'humidity', value: Float64Array) => {
      const path = join(folder, `${channels.length}`);
      writeReadings(path, { time, value, doubt: new Uint8Array(value.length) });
      const bounds = { spacing: 60, first: time[0], last: time[time.length - 1] };
      channels.push({ file, column: quantity, room: file, place: 'inside', quantity, path, ...bounds });
    };
    keep('temperature', temperature);
    keep(
      'humidity',
      humidity.map((it) => it / 100),
    );
  }
  const { name } = house;
  const location = { latitude: 52, longitude: -1, timeZone: 'Europe/London' };
  return {
    name,
    timeZone: location.timeZone,
    json: new TextEncoder().encode(JSON.stringify({ name, location, loggers: [] })),
    content: name,
    figures: name,
    files: [],
    channels,
    layouts: [],
  };
}
