/** Readings posted to a stored house as a gateway posts them: read in a thread that is kept ready, stored by the writer's code. */
import { mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FolderToPrepare, prepareFolder } from '../../../server/jobs/prepareFolder.ts';
import { versionBefore } from '../../../server/jobs/versionBefore.ts';
import { DATABASE_FILE, openForReading, openForWriting } from '../../../server/store/database.ts';
import { readingFrom } from '../../../server/store/reading.ts';
import { writingTo } from '../../../server/store/writing.ts';
import type { Contestant } from '../bench.ts';
import { START } from '../house/inventedHouse.ts';

/** Postings, each of three rows. */
export const POSTINGS = 6;

/** Of a processor, for each posting [s], and what it adds to the log of changes [bytes]. */
export interface Posted {
  readonly read: readonly number[];
  readonly stored: readonly number[];
  readonly log: readonly number[];
  /** Taking all of them back at once. */
  readonly undoing: number;
}

const HOUSE = 'house-of-the-bench';

/** @param input a house folder; its name ends in the days that it has */
export const ours: Contestant = {
  name: 'ours',
  ready:
    async () =>
    async (input): Promise<Posted> => {
      const days = Number(/\d+$/.exec(input)?.[0]);
      const data = join(input, '..', `posting ${process.pid}`);
      mkdirSync(data);
      const database = join(data, DATABASE_FILE);
      const db = openForWriting(database);
      db.pragma('wal_autocheckpoint = 0'); // so that its length tells what was written
      const writing = writingTo(db);
      const own = openForReading(database);
      const reading = readingFrom(own);
      const prepare = (folder: FolderToPrepare['folder'], onto: FolderToPrepare['onto'], name: string) => {
        const { house, preview } = prepareFolder(
          { database, folder, onto, into: join(data, name) },
          () => {},
        );
        if (house === null) throw new Error(JSON.stringify(preview));
        return house;
      };
      const names = readdirSync(input).map(
        (name) => [name, { path: join(input, name), sentAs: name }] as const,
      );
      writing.keepHouse(HOUSE, prepare(new Map(names), null, 'first'), false, START);

      const posted: Record<'read' | 'stored' | 'log', number[]> = { read: [], stored: [], log: [] };
      const log = `${database}-wal`;
      for (let i = 0; i < POSTINGS; i++) {
        db.pragma('wal_checkpoint(TRUNCATE)');
        const path = join(data, 'posted');
        writeFileSync(path, rowsFrom(START + days * 86_400 + i * 1800));
        const { content } = reading.house(HOUSE) ?? { content: '' };
        const begun = process.cpuUsage();
        const onto = { id: HOUSE, content, posted: days, unseen: true };
        const brought = new Map([[`logger-1-1 (${i + 2}).csv`, { path, sentAs: 'logger-1-1.csv' }]]);
        const house = prepare(brought, onto, `reading ${i}`);
        posted.read.push(since(begun));
        const storing = process.cpuUsage();
        writing.addVersion(HOUSE, content, house, START, days);
        posted.stored.push(since(storing));
        posted.log.push(statSync(log).size);
        rmSync(join(data, `reading ${i}`), { recursive: true });
      }
      const begun = process.cpuUsage();
      const before = versionBefore(database, HOUSE, join(data, 'undoing'));
      if (before.kind !== 'version') throw new Error(before.kind);
      writing.undoVersion(HOUSE, reading.house(HOUSE)?.content ?? '', before.house);
      return { ...posted, undoing: since(begun) };
    },
};

function rowsFrom(from: number): string {
  const rows = [0, 600, 1200].map((k) => `${new Date((from + k) * 1000).toISOString()},19.${k / 600}1,45.5`);
  return ['Time,Temperature (°C),Humidity (%)', ...rows, ''].join('\n');
}

function since(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
