/** Ours: the route of the readings view itself, to its JSON; the import is a house of a year, kept and deleted. */
import { join } from 'node:path';
import { readingsApi } from '../../../server/api/readings.ts';
import { startWorker } from '../../../server/jobs/worker.ts';
import { writerInThread } from '../../../server/jobs/writer.ts';
import { DATABASE_FILE, openForReading } from '../../../server/store/database.ts';
import { readingFrom } from '../../../server/store/reading.ts';
import type { Contestant } from '../bench.ts';
import { HOUSE, laidOut } from './stored.ts';
import { cases, meanwhile, viewed } from './views.ts';

export const ours: Contestant = {
  name: 'ours (the route)',
  ready: async (kase) => async (input) => {
    const path = join(input, DATABASE_FILE);
    const db = openForReading(path);
    const api = readingsApi({ reading: readingFrom(db) });
    const { writer, close } = writerInThread(() => startWorker('writerWorker', path), console.error);
    const other = laidOut(input);
    const stop = meanwhile(
      cases.some((it) => it.name === kase && it.importing),
      async () => {
        await writer.keepHouse('imported', other, false, 0);
        await writer.deleteHouse('imported');
      },
    );
    const made = await viewed(async () => (await api.request(`/${HOUSE}/readings`)).text());
    const imports = await stop();
    await close();
    db.close();
    return { ...made, imports };
  },
};
