/** The dashboard's server on a port: everything that runs, started together and stopped together. */
import { mkdirSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { availableParallelism } from 'node:os';
import { join, resolve } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import type { Access } from './access/access.ts';
import { createApp } from './app.ts';
import { calculateInThread } from './jobs/calculateInThread.ts';
import { startWorker } from './jobs/worker.ts';
import { writerInThread } from './jobs/writer.ts';
import { packageRoot, softwareVersion } from './root.ts';
import { begin, createServices } from './services.ts';
import { DATABASE_FILE, openForReading, openForWriting } from './store/database.ts';
import { readingFrom } from './store/reading.ts';
import { removeUnfinished } from './store/restoring.ts';
import { takeForItself } from './store/soleUse.ts';
import { limitArrival } from './timeouts.ts';

/** Each assessment holds the logs of a house in memory; one core is left to answer with. */
const MOST_AT_ONCE = 4;
/** A large file takes longer than Node's five minutes by the telephone network of a building site [ms]. */
const LONGEST_UPLOAD = 60 * 60 * 1000;

export interface Running {
  readonly port: number;
  stop(): Promise<void>;
}

/**
 * Resolves when it answers on the port.
 *
 * @param port 0 for any free one
 * @param largestFile of those that are brought [bytes]
 * @param access who may look
 * @param watchedFolder in which houses' logs appear; null for none
 * @throws FolderInUse, UnusableDatabase, or what the machine has against the port or the folder
 */
export async function serve(
  host: string,
  port: number,
  dataFolder: string,
  largestFile: number,
  access: Access,
  watchedFolder: string | null,
  tell: (text: string) => void,
): Promise<Running> {
  // The port comes first: a second start on the same one fails before it touches the first one's folder.
  let answer: (app: ReturnType<typeof createApp>) => void = () => {};
  const app = new Promise<ReturnType<typeof createApp>>((resolve) => {
    answer = resolve;
  });
  const server = createAdaptorServer({
    fetch: async (request, env) => (await app).fetch(request, env),
  }) as Server;
  limitArrival(server);
  server.requestTimeout = LONGEST_UPLOAD;
  const cleanUps: (() => unknown)[] = [() => closeServer(server)];
  let letGo = () => {};
  const stop = async () => {
    for (const cleanUp of cleanUps) await cleanUp();
    letGo();
  };
  await listen(server, host, port);

  try {
    const folder = resolve(dataFolder);
    // Of other users of the machine nobody reads when people are at home.
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    letGo = takeForItself(folder, 'a dashboard', new Date());
    const database = join(folder, DATABASE_FILE);
    removeUnfinished(folder);
    openForWriting(database).close();
    const db = openForReading(database);
    const { writer, close: closeWriter } = writerInThread(() => startWorker('writerWorker', database), tell);
    const closing = new AbortController();
    const services = createServices({
      database,
      software: softwareVersion(),
      reading: readingFrom(db),
      writer,
      calculate: calculateInThread(() => startWorker('calculationWorker')),
      atOnce: Math.min(MOST_AT_ONCE, Math.max(1, availableParallelism() - 1)),
      bringingFolder: join(folder, 'bringing'),
      demonstrationFolder: join(packageRoot, 'sample-logs'),
      watchedFolder,
      pages: join(packageRoot, 'dist/web'),
      largestFile,
      closing: closing.signal,
      tell,
    });
    cleanUps.unshift(() => closing.abort());
    // The writer closes last: only a connection that writes can tidy the log of changes into the file.
    cleanUps.push(
      () => services.close(),
      () => db.close(),
      closeWriter,
    );
    await begin(services);
    answer(createApp(services, access));
  } catch (error) {
    await stop();
    throw error;
  }
  return { port: (server.address() as AddressInfo).port, stop };
}

function closeServer(server: Server): Promise<unknown> {
  const closed = new Promise((done) => server.close(done));
  server.closeAllConnections();
  return closed;
}

const listen = (server: Server, host: string, port: number) =>
  new Promise<void>((done, failed) => {
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      done();
    });
  });
