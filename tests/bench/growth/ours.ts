/** Houses brought as the dashboard brings them (folder read, kept by the writer's code), looked at, and backed up. */
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { housesApi } from '../../../server/api/houses.ts';
import { readingsApi } from '../../../server/api/readings.ts';
import { calculateInThread } from '../../../server/jobs/calculateInThread.ts';
import { prepareFolder } from '../../../server/jobs/prepareFolder.ts';
import { startWorker } from '../../../server/jobs/worker.ts';
import { writerInThread } from '../../../server/jobs/writer.ts';
import { createServices } from '../../../server/services.ts';
import { DATABASE_FILE, openForReading, openForWriting } from '../../../server/store/database.ts';
import { type Reading, readingFrom } from '../../../server/store/reading.ts';
import { copyWhole } from '../../../server/store/wholeCopy.ts';
import { writingTo } from '../../../server/store/writing.ts';
import type { Contestant } from '../bench.ts';

/** How long it took, and how much of a processor [s]: on a crowded machine only that tells anything. */
export interface Taken {
  readonly seconds: number;
  readonly processor: number;
}

export interface Grown {
  readonly importing: Taken;
  readonly view: Taken;
  readonly list: Taken;
  readonly backup: Taken;
  /** [bytes] */
  readonly file: number;
}

/** @param input holds a folder for each house */
export const ours: Contestant = {
  name: 'ours',
  ready:
    async () =>
    async (input): Promise<Grown> => {
      const houses = readdirSync(input);
      const data = join(input, '..', `${process.pid}`);
      mkdirSync(data);
      const path = join(data, DATABASE_FILE);
      const db = openForWriting(path);
      const writing = writingTo(db);
      const importing = await timed(() => {
        for (const id of houses) {
          const into = join(data, id);
          const { house, preview } = prepareFolder(
            { database: path, folder: staged(join(input, id)), onto: null, into },
            () => {},
          );
          if (house === null) throw new Error(JSON.stringify(preview.problems));
          writing.keepHouse(id, house, false, 0);
        }
      });
      const own = openForReading(path);
      const reading = readingFrom(own);
      const view = await timed(async () =>
        (await readingsApi({ reading }).request(`/${houses[0]}/readings`)).text(),
      );
      const services = servicesFor(path, data, reading);
      const list = await timed(async () => (await housesApi(services).request('/')).text());
      const backup = await timed(() => copyWhole(own, join(data, 'backup')));
      return { importing, view, list, backup, file: statSync(path).size };
    },
};

const servicesFor = (database: string, data: string, reading: Reading) =>
  createServices({
    database,
    software: 'bench',
    reading,
    writer: writerInThread(() => startWorker('writerWorker', database), console.error).writer,
    calculate: calculateInThread(() => startWorker('calculationWorker')),
    atOnce: 1,
    bringingFolder: join(data, 'bringing'),
    demonstrationFolder: data,
    watchedFolder: null,
    pages: data,
    largestFile: Number.POSITIVE_INFINITY,
    closing: new AbortController().signal,
    tell: console.error,
  });

const staged = (folder: string) =>
  new Map(readdirSync(folder).map((name) => [name, { path: join(folder, name), sentAs: name }]));

async function timed(task: () => unknown): Promise<Taken> {
  const before = performance.now();
  const cpuBefore = process.cpuUsage();
  await task();
  const { user, system } = process.cpuUsage(cpuBefore);
  return { seconds: (performance.now() - before) / 1000, processor: (user + system) / 1e6 };
}
