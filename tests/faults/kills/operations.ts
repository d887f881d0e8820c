/** What is killed: each operation on a folder, from a state that is known to one that is known. */
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import type { AddedExport } from '../../../server/api/shapes.ts';
import { backupCommand } from '../../../server/backupCommand.ts';
import { restoreCommand } from '../../../server/restoreCommand.ts';
import { backupBeforeMigration } from '../../../server/store/beforeMigration.ts';
import { DATABASE_FILE, migrate, openForWriting } from '../../../server/store/database.ts';
import { migrations } from '../../../server/store/migrations/index.ts';
import { house, houseText } from '../../server/inventedHouse.ts';
import { heldCalculation, type ServerAtHand, serverAtHand } from '../../server/serverAtHand.ts';
import { contentOf } from './content.ts';

export interface Operation {
  readonly name: string;
  /** Whether it says when it begins to store. */
  readonly tellsStoring: boolean;
  /** Makes the folder as it is before. */
  prepare(folder: string): Promise<void>;
  /**
   * Does it, or does it again.
   *
   * @param storing called when what was read or copied goes into the database
   * @throws Error when it does not come to its end
   */
  act(folder: string, storing: () => void): Promise<void>;
  /** What the folder holds: the same text for the same. */
  content(folder: string): string;
}

const DAYS = 30;
const database = (folder: string) => join(folder, DATABASE_FILE);
const stored = (folder: string) => contentOf(database(folder));

/** So many days of ten minutes, some of them doubted. */
function log(firstDay: number, days: number, warmth: number): string {
  const rows = Array.from({ length: days * 144 }, (_, k) => {
    const i = firstDay * 144 + k;
    const time = new Date(Date.UTC(2027, 0, 1) + i * 600_000).toISOString();
    const value = i % 500 === 7 ? 999 : warmth + 4 * Math.sin(i / 23) + (i % 7) / 10;
    return `${time.slice(0, 16).replace('T', ' ')},${value.toFixed(2)}`;
  });
  return ['Time,Temperature (°C)', ...rows].join('\n');
}
const folderOfHouse = {
  'house.json': houseText,
  'in.csv': log(0, DAYS, 18),
  'logs/out.csv': log(0, DAYS, 4),
};
/** Goes on where the one inside left off. */
const later = log(DAYS - 2, DAYS, 18);

/** A server that assesses nothing. */
async function within<T>(folder: string, storing: () => void, act: (server: ServerAtHand) => Promise<T>) {
  const server = serverAtHand({ calculate: heldCalculation().calculate }, folder);
  const { writer } = server.services;
  for (const call of ['keepHouse', 'addVersion', 'undoVersion'] as const) {
    const write = writer[call] as (...args: unknown[]) => Promise<void>;
    const marked = async (...args: unknown[]) => {
      await new Promise((resolve) => setImmediate(resolve));
      storing();
      return write(...args);
    };
    Object.assign(writer, { [call]: marked });
  }
  const result = await act(server);
  await server.end();
  return result;
}

async function succeeds(answer: Promise<Response>, ...also: number[]): Promise<void> {
  const response = await answer;
  if (!response.ok && !also.includes(response.status))
    throw new Error(`refused with ${response.status}: ${await response.text()}`);
}

async function bring(server: ServerAtHand, files: Readonly<Record<string, string>>, onto?: string) {
  const bringing = await server.begin(onto);
  await bringing.put(files);
  await succeeds(bringing.keep());
}
const onlyHouse = ({ services }: ServerAtHand) => services.reading.houses()[0].id;

const withHouse = (folder: string) =>
  within(
    folder,
    () => {},
    (server) => bring(server, folderOfHouse),
  );
const continued = (folder: string, storing: () => void) =>
  within(folder, storing, (server) => bring(server, { 'in.csv': later }, onlyHouse(server)));

const importOfHouse: Operation = {
  name: 'import of a house',
  tellsStoring: true,
  prepare: async (folder) => void openForWriting(database(folder)).close(),
  act: (folder, storing) => within(folder, storing, (server) => bring(server, folderOfHouse)),
  content: stored,
};

const laterExport: Operation = {
  name: 'import of a later export',
  tellsStoring: true,
  prepare: withHouse,
  act: continued,
  content: stored,
};

const undo: Operation = {
  name: 'undo',
  tellsStoring: true,
  async prepare(folder) {
    await withHouse(folder);
    await continued(folder, () => {});
  },
  act: (folder, storing) =>
    within(folder, storing, (server) =>
      // Done already, there is nothing to undo.
      succeeds(server.ask(`/api/houses/${onlyHouse(server)}/undo`, { method: 'POST' }), 409),
    ),
  content: stored,
};

const migration: Operation = {
  name: 'migration',
  tellsStoring: true,
  async prepare(folder) {
    const db = new Sqlite(database(folder));
    db.pragma('journal_mode = WAL');
    migrate(db, migrations.slice(0, 1));
    for (let number = 1; number <= 3; number++) firstLayout(db, number);
    db.close();
  },
  async act(folder, storing) {
    if (layoutOf(folder) === 1) {
      // As opening does, with a mark between its two halves.
      const db = new Sqlite(database(folder));
      backupBeforeMigration(db, database(folder), 1);
      db.close();
    }
    storing();
    openForWriting(database(folder)).close();
  },
  content: (folder) => `layout ${layoutOf(folder)}: ${stored(folder)}`,
};

function layoutOf(folder: string): number {
  const db = new Sqlite(database(folder), { readonly: true });
  try {
    return Number(db.pragma('user_version', { simple: true }));
  } finally {
    db.close();
  }
}

/** A house as the first layout has it: files of a few megabytes, and readings. */
function firstLayout(db: Sqlite.Database, number: number): void {
  db.prepare('INSERT INTO house VALUES (?, ?, ?, ?, ?, 0, 0, ?)').run(
    number,
    `h${number}`,
    house.name,
    'UTC',
    Buffer.from(houseText),
    `content ${number}`,
  );
  for (const name of ['in.csv', 'out.csv']) {
    const content = Buffer.from(`${name} ${number} ${later}`.repeat(16));
    db.prepare('INSERT INTO file VALUES (?, ?, ?, ?, ?)').run(
      number,
      name,
      content.length,
      `${number} ${name}`,
      content,
    );
    const { lastInsertRowid: channel } = db
      .prepare("INSERT INTO channel VALUES (NULL, ?, ?, 'T', 'Hall', 'inside', 'temperature', 600, 0, 1)")
      .run(number, name);
    for (let day = 0; day < 100; day++) {
      db.prepare('INSERT INTO day VALUES (?, ?, 144, 1, 2, 200, ?)').run(
        channel,
        day,
        Buffer.alloc(768, day),
      );
      db.prepare('INSERT INTO day_readings VALUES (?, ?, ?)').run(channel, day, Buffer.alloc(1728, day));
    }
  }
}

const BACKUP = 'houses.backup';
const backup: Operation = {
  name: 'backup over an older one',
  tellsStoring: false,
  async prepare(folder) {
    await withHouse(folder);
    mkdirSync(join(folder, 'kept'));
    copyFileSync(database(folder), join(folder, 'kept', BACKUP));
    await continued(folder, () => {});
  },
  async act(folder) {
    let said = '';
    const to = { write: (text: string) => (said += text) };
    const file = join(folder, 'kept', BACKUP);
    const code = backupCommand([file, '--data', folder, '--overwrite'], {}, to, to);
    if (code !== 0) throw new Error(said);
  },
  content: (folder) => `${stored(folder)}\n${contentOf(join(folder, 'kept', BACKUP))}`,
};

async function posted(server: ServerAtHand, firstDay: number, days: number): Promise<void> {
  const answer = await server.ask(`/api/houses/${onlyHouse(server)}/readings?file=in.csv`, {
    method: 'POST',
    headers: { 'Content-Type': 'text/csv' },
    body: log(firstDay, days, 18),
  });
  await succeeds(Promise.resolve(answer.clone()));
  const { file } = (await answer.json()) as AddedExport;
  if (file !== null && file !== 'in (2).csv') throw new Error(`it went into ${file}`);
}

/** Joined into a file that was posted before. */
const posting: Operation = {
  name: 'posting',
  tellsStoring: true,
  async prepare(folder) {
    await withHouse(folder);
    await within(
      folder,
      () => {},
      (server) => posted(server, DAYS - 1, 2),
    );
  },
  act: (folder, storing) => within(folder, storing, (server) => posted(server, DAYS, 3)),
  content: stored,
};

const restore: Operation = {
  name: 'restore',
  tellsStoring: false,
  prepare: backup.prepare,
  /** Each time it puts aside what was there. */
  async act(folder) {
    let said = '';
    const to = { write: (text: string) => (said += text) };
    const code = restoreCommand([join(folder, 'kept', BACKUP), '--data', folder], {}, new Date(), to, to);
    if (code !== 0) throw new Error(said);
  },
  content: backup.content,
};

export const operations: readonly Operation[] = [
  importOfHouse,
  laterExport,
  posting,
  undo,
  migration,
  backup,
  restore,
];

/** Every database file of a folder under a name of its own: what is half done has another ending. */
export function databasesIn(folder: string, list: (folder: string) => readonly string[]): string[] {
  const named = (name: string) => !/\.part(-|$)|-(wal|shm|journal)$/.test(name);
  const kept = join(folder, 'kept');
  return [
    ...list(folder)
      .filter((name) => /^stillwarm.*\.sqlite/.test(name) && named(name))
      .map((name) => join(folder, name)),
    ...(existsSync(kept)
      ? list(kept)
          .filter(named)
          .map((name) => join(kept, name))
      : []),
  ];
}
