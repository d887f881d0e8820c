/** Backups while the store is open and written to, and a folder brought back to one. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { backupCommand } from '../../server/backupCommand.ts';
import { restoreCommand } from '../../server/restoreCommand.ts';
import { backupBeforeMigration } from '../../server/store/beforeMigration.ts';
import { migrate, openForReading, openForWriting } from '../../server/store/database.ts';
import { migrations } from '../../server/store/migrations/index.ts';
import { readingFrom } from '../../server/store/reading.ts';
import { removeUnfinished } from '../../server/store/restoring.ts';
import { takeForItself } from '../../server/store/soleUse.ts';
import { assertSound } from '../../server/store/soundness.ts';
import { writingTo } from '../../server/store/writing.ts';

let folder: string;
let data: string;
let file: string;
let db: Database;
const now = new Date('2027-01-02T12:30:05Z');
const named = (name: string) => ({
  name,
  timeZone: 'UTC',
  json: new TextEncoder().encode(`{ "name": "${name}" }`),
  content: name,
  figures: name,
  files: [],
  channels: [],
  layouts: [],
});
const keep = (name: string) => writingTo(db).keepHouse(name, named(name), false, 0);
const housesIn = (path: string) => {
  const it = openForReading(path);
  try {
    return readingFrom(it)
      .houses()
      .map(({ name }) => name);
  } finally {
    it.close();
  }
};
const stored = () => housesIn(join(data, 'stillwarm.sqlite'));

/** What a command answers, and what it says. */
function run(command: 'backup' | 'restore', ...args: string[]) {
  let said = '';
  const to = { write: (text: string) => (said += text) };
  const all = [...args, '--data', data];
  const code = command === 'backup' ? backupCommand(all, {}, to, to) : restoreCommand(all, {}, now, to, to);
  return { code, said };
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillwarm-backup-'));
  data = join(folder, 'data');
  file = join(folder, 'houses.backup');
  mkdirSync(data);
  db = openForWriting(join(data, 'stillwarm.sqlite'));
  keep('First');
});
afterEach(() => {
  db.close();
  rmSync(folder, { recursive: true });
});

describe('a backup', () => {
  test('made while another connection is in the middle of a change holds what was stored before it', () => {
    db.exec('BEGIN IMMEDIATE');
    db.exec("UPDATE house SET name = 'Half-way'");
    expect(run('backup', file)).toMatchObject({ code: 0 });
    db.exec('ROLLBACK');
    expect(housesIn(file)).toEqual(['First']);
  });

  test('is one sound file that holds the layout too, and nothing else is left beside it', () => {
    run('backup', file);
    const it = new Sqlite(file, { readonly: true });
    expect(it.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(it.pragma('user_version', { simple: true })).toBe(migrations.length);
    it.close();
    expect(readdirSync(folder).filter((name) => name.startsWith('houses'))).toEqual(['houses.backup']);
  });

  test('never overwrites what is there, unless it is told to', () => {
    writeFileSync(file, 'mine');
    expect(run('backup', file)).toMatchObject({
      code: 2,
      said: expect.stringMatching(/there already.*--overwrite/),
    });
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect(run('backup', file, '--overwrite').code).toBe(0);
    expect(housesIn(file)).toEqual(['First']);
  });

  test.skipIf(process.platform === 'win32')('never takes the place of what is no file', () => {
    execFileSync('mkfifo', [file]);
    expect(run('backup', file, '--overwrite')).toMatchObject({
      code: 2,
      said: expect.stringContaining('no plain file'),
    });
    expect(statSync(file).isFIFO()).toBe(true);
  });

  test('onto the database itself is refused, also when told to overwrite', () => {
    const itself = join(data, 'stillwarm.sqlite');
    expect(run('backup', itself, '--overwrite')).toMatchObject({
      code: 2,
      said: expect.stringMatching(/itself/),
    });
    expect(stored()).toEqual(['First']);
  });

  test('of a damaged database is not made, and says so', () => {
    keep('Second');
    db.close();
    const path = join(data, 'stillwarm.sqlite');
    const bytes = readFileSync(path);
    bytes.fill(0x5a, 4096, bytes.length);
    writeFileSync(path, bytes);
    expect(run('backup', file)).toMatchObject({ code: 2, said: expect.stringMatching(/damaged/) });
    expect(existsSync(file)).toBe(false);
    expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
  });

  test('of a folder without a database, and into a folder that is not there, is refused', () => {
    expect(run('backup', join(folder, 'no', 'such.backup'))).toMatchObject({
      code: 2,
      said: expect.stringMatching(/no folder/),
    });
    db.close();
    rmSync(join(data, 'stillwarm.sqlite'));
    expect(run('backup', file)).toMatchObject({ code: 2, said: expect.stringMatching(/nothing to back up/) });
  });
});

describe('restoring', () => {
  beforeEach(() => {
    run('backup', file);
    keep('Second');
  });

  test.skipIf(process.getuid?.() === 0)('of a backup that this user may not read says so', () => {
    db.close();
    chmodSync(file, 0);
    expect(run('restore', file)).toEqual({
      code: 2,
      said: expect.stringMatching(/cannot be read by this user/),
    });
    expect(stored()).toEqual(['First', 'Second']);
  });

  test('brings back what the backup holds, and puts aside what was there', () => {
    db.close();
    const { code, said } = run('restore', file);
    const aside = join(data, 'stillwarm before restoring 2027-01-02 12.30.05.sqlite');
    expect([code, said]).toEqual([0, expect.stringContaining(aside)]);
    expect(stored()).toEqual(['First']);
    expect(housesIn(aside)).toEqual(['First', 'Second']);
    expect(readFileSync(join(data, 'stillwarm.sqlite'))).toEqual(readFileSync(file));
  });

  test('what was put aside can be restored in turn', () => {
    db.close();
    run('restore', file);
    const aside = join(data, 'stillwarm before restoring 2027-01-02 12.30.05.sqlite');
    const to = { write: () => {} };
    expect(restoreCommand([aside, '--data', data], {}, new Date(0), to, to)).toBe(0);
    expect(stored()).toEqual(['First', 'Second']);
  });

  test('into an empty folder needs nothing there', () => {
    db.close();
    rmSync(data, { recursive: true });
    expect(run('restore', file)).toEqual({ code: 0, said: `${data} is now as ${file} has it.\n` });
    expect(stored()).toEqual(['First']);
  });

  test('is not spoilt by the log of changes of a database that was taken away', () => {
    copyFileSync(join(data, 'stillwarm.sqlite-wal'), join(folder, 'log'));
    db.close();
    rmSync(join(data, 'stillwarm.sqlite'));
    renameSync(join(folder, 'log'), join(data, 'stillwarm.sqlite-wal'));
    expect(run('restore', file).code).toBe(0);
    expect(stored()).toEqual(['First']);
    assertSound(join(data, 'stillwarm.sqlite'));
  });

  test('replaces a damaged database, whose remains are put aside', () => {
    db.close();
    writeFileSync(join(data, 'stillwarm.sqlite'), 'Dear diary, '.repeat(100));
    expect(run('restore', file).code).toBe(0);
    expect(stored()).toEqual(['First']);
    const aside = readdirSync(data).find((name) => name.startsWith('stillwarm before'));
    expect(readFileSync(join(data, aside ?? ''), 'utf8')).toContain('Dear diary');
  });

  test('while a dashboard has the folder open is refused, and everything stays as it was', () => {
    const letGo = takeForItself(data, 'a dashboard', now);
    db.close();
    expect(run('restore', file)).toEqual({
      code: 2,
      said: expect.stringMatching(/in use by a dashboard \(process \d+ on .*since 2 Jan 2027.*Stop that one/),
    });
    expect(readdirSync(data).toSorted()).toEqual(['stillwarm.lock', 'stillwarm.sqlite']);
    expect(stored()).toEqual(['First', 'Second']);
    letGo();
    expect(run('restore', file).code).toBe(0);
  });

  test('while another program has the database open is refused, and everything stays as it was', () => {
    expect(run('restore', file)).toEqual({
      code: 2,
      said: expect.stringMatching(/in use by another program/),
    });
    expect(readdirSync(data).toSorted()).toEqual(['stillwarm.lock', ...DATABASE_OPEN]);
    expect(stored()).toEqual(['First', 'Second']);
  });

  test('twice in the same second puts aside what was there each time', () => {
    db.close();
    run('restore', file);
    expect(run('restore', file)).toMatchObject({ code: 0, said: expect.stringMatching(/05 \(2\)\.sqlite/) });
    expect(housesIn(join(data, 'stillwarm before restoring 2027-01-02 12.30.05.sqlite'))).toEqual([
      'First',
      'Second',
    ]);
  });

  test('that was killed before the database was replaced leaves no second name of it, nor half a copy', () => {
    db.close();
    const database = join(data, 'stillwarm.sqlite');
    const aside = join(data, 'stillwarm before restoring 2026-12-01 10.00.00.sqlite');
    linkSync(database, aside);
    writeFileSync(`${aside}.4711.part`, 'half');
    expect(run('restore', aside)).toMatchObject({ code: 2, said: expect.stringMatching(/itself/) });
    removeUnfinished(data);
    expect(readdirSync(data)).toEqual(['stillwarm.sqlite']);
    expect(stored()).toEqual(['First', 'Second']);
  });

  test.each([
    ['a file that is no database', () => writeFileSync(file, 'Dear diary, '.repeat(100)), /no backup of/],
    ['a database of another program', () => foreign(), /no backup of/],
    ['a backup of a newer version', () => change(`PRAGMA user_version = ${migrations.length + 1}`), /newer/],
    [
      'a backup that was cut short',
      () => writeFileSync(file, readFileSync(file).subarray(0, -8192)),
      /damaged/,
    ],
    ['a backup whose rows belong to nothing', () => change(ORPHAN), /damaged/],
  ])('%s is refused, and everything stays as it was', (_, spoil, reason) => {
    db.close();
    spoil();
    expect(run('restore', file)).toEqual({ code: 2, said: expect.stringMatching(reason) });
    expect(readdirSync(data)).toEqual(['stillwarm.sqlite']);
    expect(stored()).toEqual(['First', 'Second']);
  });

  const DATABASE_OPEN = ['stillwarm.sqlite', 'stillwarm.sqlite-shm', 'stillwarm.sqlite-wal'];
  const ORPHAN =
    "PRAGMA foreign_keys = OFF; INSERT INTO version (number, house, kept_s, json) VALUES (9, 99, 0, x'00')";
  const foreign = () => {
    rmSync(file);
    new Sqlite(file).exec('CREATE TABLE diary (text TEXT)').close();
  };
  const change = (sql: string) => new Sqlite(file).exec(sql).close();
});

describe('before a migration', () => {
  const path = () => join(data, 'stillwarm.sqlite');
  const before = () => readdirSync(data).filter((name) => name.includes('before layout'));

  test('the database as it was is kept beside it', () => {
    db.close();
    rmSync(path());
    const old = new Sqlite(path());
    migrate(old, migrations.slice(0, 1));
    old.exec("INSERT INTO house VALUES (1, 'x', 'Old', 'UTC', x'00', 0, 0, 'c')");
    old.close();
    db = openForWriting(path());
    expect(before()).toEqual(['stillwarm.sqlite before layout 2']);
    const kept = new Sqlite(join(data, before()[0]), { readonly: true });
    expect(kept.pragma('user_version', { simple: true })).toBe(1);
    expect(kept.prepare('SELECT name FROM house').pluck().all()).toEqual(['Old']);
    kept.close();
    expect(stored()).toEqual(['Old']);
  });

  test('of such backups the latest stays, and other files are left alone', () => {
    writeFileSync(`${path()} before layout of mine`, '');
    backupBeforeMigration(db, path(), 1);
    backupBeforeMigration(db, path(), 2);
    expect(before()).toEqual(['stillwarm.sqlite before layout 3', 'stillwarm.sqlite before layout of mine']);
  });

  test('a new database and one of the newest layout have none', () => {
    expect(before()).toEqual([]);
    db.close();
    db = openForWriting(join(data, 'stillwarm.sqlite'));
    expect(before()).toEqual([]);
  });
});
