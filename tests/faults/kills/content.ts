/** What a database holds, bytes as their hashes: the same for the same houses, whenever they were kept and by which number. */
import { existsSync } from 'node:fs';
import Sqlite, { type Database } from 'better-sqlite3';
import { sha256 } from '../../../server/store/sha256.ts';

/** Of any layout, as JSON. */
export function contentOf(path: string): string {
  // A change that was broken off is taken back by whoever may write.
  const db = new Sqlite(path, { readonly: !existsSync(`${path}-journal`) });
  try {
    const houses = db.prepare<[], { number: number; name: string; away: number }>(
      'SELECT number, name, away FROM house ORDER BY number',
    );
    return JSON.stringify(
      houses.all().map(({ number, name, away }) => ({
        name,
        away,
        versions: versionsOf(db, number),
        channels: channelsOf(db, number),
      })),
    );
  } finally {
    db.close();
  }
}

interface Bytes {
  readonly name: string;
  readonly bytes: Buffer;
}
const hashed = ({ name, bytes }: Bytes) => [name, sha256(bytes)];

function versionsOf(db: Database, house: number): unknown {
  const layout = Number(db.pragma('user_version', { simple: true }));
  const rows = (sql: string, of: number) => db.prepare<[number], Bytes>(sql).all(of);
  if (layout === 1) {
    const [json] = rows("SELECT 'house.json' AS name, json AS bytes FROM house WHERE number = ?", house);
    const files = rows('SELECT name, content AS bytes FROM file WHERE house = ? ORDER BY rowid', house);
    return [[hashed(json), ...files.map(hashed)]];
  }
  const versions = db.prepare<[number], { number: number; bytes: Buffer }>(
    'SELECT number, json AS bytes FROM version WHERE house = ? ORDER BY number',
  );
  return versions.all(house).map(({ number, bytes }) => {
    const files = rows(
      `SELECT name, content AS bytes FROM file JOIN original USING (sha256)
       WHERE version = ? ORDER BY file.rowid`,
      number,
    );
    return [hashed({ name: 'house.json', bytes }), ...files.map(hashed)];
  });
}

/** Every channel with the bytes of its readings, its hours and what is doubted. */
function channelsOf(db: Database, house: number): unknown {
  const channels = db.prepare<[number], { number: number; file: string; column_name: string }>(
    'SELECT number, file, column_name FROM channel WHERE house = ? ORDER BY number',
  );
  const days = (table: string, column: string, channel: number) =>
    db
      .prepare<[number], Bytes>(
        `SELECT CAST(day AS TEXT) AS name, ${column} AS bytes FROM ${table} WHERE channel = ? ORDER BY day`,
      )
      .all(channel)
      .map(hashed);
  const layout = Number(db.pragma('user_version', { simple: true }));
  return channels.all(house).map(({ number, file, column_name }) => {
    const readings = days('day_readings', 'readings', number);
    const hours = days('day', 'hours', number);
    const doubts = layout === 1 ? [] : days('day_doubts', 'instants', number);
    return [file, column_name, readings.length, sha256(JSON.stringify([readings, hours, doubts]))];
  });
}
