import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { migrate, openForWriting, UnusableDatabase } from '../../server/store/database.ts';
import { packDay } from '../../server/store/dayBlob.ts';
import { packHours } from '../../server/store/hourBlob.ts';
import { migration001 } from '../../server/store/migrations/001.ts';
import { migrations } from '../../server/store/migrations/index.ts';
import { readingFrom } from '../../server/store/reading.ts';
import { FolderInUse, LOCK_FILE, takeForItself } from '../../server/store/soleUse.ts';
import { writingTo } from '../../server/store/writing.ts';

let folder: string;
let path: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillwarm-database-'));
  path = join(folder, 'stillwarm.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a new database has the newest layout, write-ahead log, foreign keys and strict tables', () => {
  const db = openForWriting(path);
  expect(db.pragma('user_version', { simple: true })).toBe(migrations.length);
  expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
  expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
  const tables = db.pragma('table_list') as { name: string; strict: number }[];
  expect(tables.filter(({ name, strict }) => !name.startsWith('sqlite_') && strict === 0)).toEqual([]);
  db.close();
});

test('opening it again changes nothing', () => {
  openForWriting(path).close();
  const before = readFileSync(path);
  openForWriting(path).close();
  expect(readFileSync(path)).toEqual(before);
});

test('a database in whose change its program was killed opens as it was before the change', () => {
  const other = join(folder, 'other.sqlite');
  const db = openForWriting(other);
  db.pragma('journal_mode = DELETE');
  db.prepare("INSERT INTO done_once (what) VALUES ('before')").run();
  db.pragma('cache_size = 1');
  // More than is kept in memory, so that some of it is in the file.
  db.exec(
    'BEGIN; DELETE FROM done_once; CREATE TABLE large (x); INSERT INTO large VALUES (zeroblob(500000))',
  );
  for (const end of ['', '-journal']) copyFileSync(`${other}${end}`, `${path}${end}`);
  db.close();
  const opened = openForWriting(path);
  expect(opened.prepare('SELECT what FROM done_once').pluck().all()).toEqual(['before']);
  expect(opened.pragma('integrity_check', { simple: true })).toBe('ok');
  opened.close();
});

describe('migrations', () => {
  const one = 'CREATE TABLE a (x INTEGER) STRICT;';
  const two = 'CREATE TABLE b (x INTEGER) STRICT; INSERT INTO a VALUES (1);';

  test('run from where the database stands', () => {
    const db = new Sqlite(':memory:');
    migrate(db, [one]);
    migrate(db, [one, two]);
    expect(db.pragma('user_version', { simple: true })).toBe(2);
    expect(db.prepare('SELECT x FROM a').pluck().all()).toEqual([1]);
  });

  test('happen together or not at all', () => {
    const db = new Sqlite(':memory:');
    expect(() => migrate(db, [one, two, 'CREATE TABLE a (y INTEGER);'])).toThrow(/already exists/);
    expect(db.pragma('user_version', { simple: true })).toBe(0);
    expect(db.prepare("SELECT count(*) FROM sqlite_schema WHERE name IN ('a', 'b')").pluck().get()).toBe(0);
  });
});

describe('a database of the first layout', () => {
  const digest = (text: string) => createHash('sha256').update(text).digest('hex');
  /** Two houses, made by hand as the first layout has them; their file "same.csv" is the same. */
  const houses = [
    {
      id: 'one',
      json: '\uFEFF{ "name": "One" }\r\n',
      files: { 'same.csv': 'a,b', 'b/own.csv': 'c,d' },
      values: [20.13, 21],
    },
    { id: 'two', json: '{}', files: { 'z.csv': 'e,f', 'same.csv': 'a,b' }, values: [-3.5, 0] },
  ];
  const day = 20_000;
  const time = Float64Array.of(day * 86_400 + 60, day * 86_400 + 120.5);

  beforeEach(() => {
    const db = new Sqlite(path);
    migrate(db, [migration001]);
    for (const { id, json, files, values } of houses) {
      const house = db
        .prepare(
          `INSERT INTO house (id, name, time_zone, json, invented, away, content)
           VALUES (?, upper(?), 'Europe/London', ?, ?, 1, 'content of ' || ?)`,
        )
        .run(id, id, Buffer.from(json), id === 'two' ? 1 : 0, id).lastInsertRowid;
      for (const [name, content] of Object.entries(files))
        db.prepare('INSERT INTO file VALUES (?, ?, ?, ?, ?)').run(
          house,
          name,
          content.length,
          digest(content),
          Buffer.from(content),
        );
      const channel = db
        .prepare(
          "INSERT INTO channel VALUES (NULL, ?, 'same.csv', 'T', NULL, 'inside', 'temperature', 60, ?, ?)",
        )
        .run(house, time[0], time[1]).lastInsertRowid;
      const readings = { time, value: Float64Array.from(values) };
      db.prepare('INSERT INTO day VALUES (?, ?, 2, ?, ?, 0, ?)').run(
        channel,
        day,
        Math.min(...values),
        Math.max(...values),
        packHours(readings, day),
      );
      db.prepare('INSERT INTO day_readings VALUES (?, ?, ?)').run(channel, day, packDay(readings, day));
      db.prepare("INSERT INTO outcome VALUES (?, 'x', 'assessed', NULL, '{}', '{\"house\":1}')").run(house);
    }
    db.close();
    openForWriting(path).close();
  });

  test('keeps all that it held: houses, files byte for byte, readings, results', () => {
    const db = openForWriting(path);
    const reading = readingFrom(db);
    expect(reading.houses().map((it) => [it.id, it.name, it.invented, it.away, it.content])).toEqual([
      ['one', 'ONE', false, true, 'content of one'],
      ['two', 'TWO', true, true, 'content of two'],
    ]);
    for (const { id, json, files, values } of houses) {
      expect(Buffer.from(reading.json(id) ?? []).toString()).toBe(json);
      expect(reading.files(id)).toEqual(
        Object.entries(files).map(([file, it]) => ({ file, bytes: it.length, sha256: digest(it) })),
      );
      for (const [name, content] of Object.entries(files))
        expect(Buffer.from(reading.file(id, name) ?? []).toString()).toBe(content);
      const [channel] = reading.channels(id);
      expect(reading.readings(channel.number, channel.first, channel.last)).toEqual([
        { time, value: Float64Array.from(values) },
      ]);
      expect(reading.assessment(id)).toBe('{"house":1}');
      expect([...reading.doubted(channel.number, channel.first, channel.last)]).toEqual([]);
    }
    db.close();
  });

  test('has the file that both houses have once, and one version of each, of a time that is not known', () => {
    const db = openForWriting(path);
    expect(db.prepare('SELECT count(*) FROM original').pluck().get()).toBe(3);
    for (const { id, files } of houses) {
      const [version, ...more] = readingFrom(db).versions(id);
      expect([version.kept, version.files.length, more]).toEqual([null, Object.keys(files).length, []]);
      expect(readingFrom(db).before(id)).toBeNull();
    }
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    db.close();
  });

  test('has the least and greatest of its days apart from their hours, as they were', () => {
    const db = openForWriting(path);
    const reading = readingFrom(db);
    const [channel] = reading.channels('one');
    expect(reading.dayExtremes(channel.number, channel.first, channel.last)).toEqual({
      start: Float64Array.of(day * 86_400),
      min: Float64Array.of(20.13),
      max: Float64Array.of(21),
    });
    const plan = db.prepare('EXPLAIN QUERY PLAN SELECT day, min, max FROM day WHERE channel = 1').all();
    expect(JSON.stringify(plan)).toContain('COVERING INDEX day_extremes');
    db.close();
  });

  test('loses with a house what only that house had', () => {
    const db = openForWriting(path);
    writingTo(db).deleteHouse('one');
    const left = db.prepare<[], string>('SELECT content FROM original').pluck().all().map(String);
    expect(left.toSorted()).toEqual(['a,b', 'e,f']);
    expect(db.prepare('SELECT count(*) FROM version').pluck().get()).toBe(1);
    db.close();
  });
});

test('a database of a newer version is refused and left alone', () => {
  const db = openForWriting(path);
  db.pragma(`user_version = ${migrations.length + 1}`);
  db.close();
  const before = readFileSync(path);
  expect(() => openForWriting(path)).toThrow(UnusableDatabase);
  expect(() => openForWriting(path)).toThrow(/newer version.*--data/);
  expect(readFileSync(path)).toEqual(before);
});

test('a file that is no database is refused and left alone', () => {
  writeFileSync(path, 'Dear diary, '.repeat(100));
  expect(() => openForWriting(path)).toThrow(/is not a database/);
  expect(readFileSync(path, 'utf8')).toContain('Dear diary');
});

describe('a data folder', () => {
  const now = new Date('2027-01-02T12:30:05Z');
  const taken = (who: string) => takeForItself(folder, who, now);

  test('is one program at a time, and whoever comes second is told by whom it is in use', () => {
    const letGo = taken('a dashboard');
    expect(() => taken('a restore')).toThrow(FolderInUse);
    expect(() => taken('a restore')).toThrow(
      new RegExp(`in use by a dashboard \\(process ${process.pid} on .*, since 2 Jan 2027`),
    );
    letGo();
    taken('a restore')();
  });

  test('whose lock was damaged can be taken all the same', () => {
    taken('a dashboard')();
    writeFileSync(join(folder, LOCK_FILE), 'Dear diary, '.repeat(1000));
    const letGo = taken('a dashboard');
    expect(() => taken('a restore')).toThrow(FolderInUse);
    letGo();
  });
});
