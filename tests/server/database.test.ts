import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { migrate, openForWriting, UnusableDatabase } from '../../server/store/database.ts';
import { migrations } from '../../server/store/migrations/index.ts';

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
