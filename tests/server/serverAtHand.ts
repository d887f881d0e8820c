/** A whole application in this process: no port, no thread, a database of its own in a temporary folder. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { BringingPreview } from '../../server/api/shapes.ts';
import { createApp } from '../../server/app.ts';
import { type Calculate, runTask, Stopped, type Task } from '../../server/jobs/tasks.ts';
import type { Writer } from '../../server/jobs/writer.ts';
import { createServices, type Parts, type Services } from '../../server/services.ts';
import { openForReading, openForWriting } from '../../server/store/database.ts';
import { readingFrom } from '../../server/store/reading.ts';
import { writingTo } from '../../server/store/writing.ts';
import type { AssessStep } from '../../src/assess.ts';

export const sampleFolder = new URL('../../sample-logs', import.meta.url).pathname;

export interface ServerAtHand {
  readonly services: Services;
  readonly folder: string;
  /** The connection that writes. */
  readonly db: Database;
  /** What was told to the terminal. */
  readonly told: string[];
  /** Asks as the page would: from this machine, by its own name. */
  ask(path: string, init?: RequestInit): Promise<Response>;
  json<T>(path: string, init?: RequestInit): Promise<T>;
  /** A bringing that was begun: of a house of its own, or onto a stored one. */
  begin(onto?: string): Promise<BringingAtHand>;
  /** The id of the house brought with these files. */
  bring(files: Readonly<Record<string, string | Uint8Array>>): Promise<string>;
  end(): Promise<void>;
}

export interface BringingAtHand {
  readonly id: string;
  /** Sends files one after the other. */
  put(files: Readonly<Record<string, string | Uint8Array>>): Promise<void>;
  preview(): Promise<BringingPreview>;
  keep(): Promise<Response>;
}

/** Runs tasks here, one turn of the event loop later. */
export const calculateHere: Calculate = (task, onStep = () => {}) => {
  let stopped = false;
  const result = new Promise<never>((resolve, reject) => {
    setImmediate(() => {
      try {
        if (stopped) reject(new Stopped());
        else resolve(runTask(task, onStep) as never);
      } catch (error) {
        reject(error);
      }
    });
  });
  return {
    result,
    stop: () => {
      stopped = true;
    },
  };
};

/** Tasks of one kind that go on until the test lets them end; everything else is worked out at once. */
export function heldCalculation(kind: Task['kind'] = 'assess') {
  const held: { step(step: AssessStep): void; end(): void; breakDown(): void }[] = [];
  const calculate: Calculate = (task, onStep = () => {}) => {
    if (task.kind !== kind) return calculateHere(task, onStep);
    let stop = () => {};
    const result = new Promise<never>((resolve, reject) => {
      stop = () => reject(new Stopped());
      held.push({
        step: onStep,
        end: () => void calculateHere(task).result.then((it) => resolve(it as never), reject),
        breakDown: () => reject(new Error('out of memory at /work/x.ts')),
      });
    });
    return { result, stop: () => stop() };
  };
  return { held, calculate };
}

export function serverAtHand(parts: Partial<Parts> = {}, folder?: string): ServerAtHand {
  const own = folder ?? mkdtempSync(join(tmpdir(), 'stillwarm-server-'));
  const database = join(own, 'stillwarm.sqlite');
  const db = openForWriting(database);
  const readOnly = openForReading(database);
  const told: string[] = [];
  const services = createServices({
    database,
    software: 'test',
    reading: readingFrom(readOnly),
    writer: writerHere(db),
    calculate: calculateHere,
    atOnce: 1,
    bringingFolder: join(own, 'bringing'),
    demonstrationFolder: sampleFolder,
    watchedFolder: null,
    pages: join(own, 'pages'),
    largestFile: 64 * 1024 * 1024,
    closing: new AbortController().signal,
    tell: (text) => told.push(text),
    ...parts,
  });
  const app = createApp(services);
  const ask = async (path: string, init: RequestInit = {}) =>
    app.request(`http://localhost:8620${path}`, {
      ...init,
      headers: { Host: 'localhost:8620', ...(init.headers as Record<string, string>) },
    });
  const json = async <T>(path: string, init?: RequestInit) => (await (await ask(path, init)).json()) as T;
  const begin = async (onto?: string): Promise<BringingAtHand> => {
    const post = onto === undefined ? { method: 'POST' } : asJson('POST', { onto });
    const { id } = await json<{ id: string }>('/api/bringings', post);
    return {
      id,
      async put(files) {
        for (const [name, content] of Object.entries(files)) await ask(filePath(id, name), raw(content));
      },
      preview: () => json<BringingPreview>(`/api/bringings/${id}`),
      keep: () => ask(`/api/bringings/${id}/keep`, { method: 'POST' }),
    };
  };
  return {
    services,
    folder: own,
    db,
    told,
    ask,
    json,
    begin,
    async bring(files) {
      const bringing = await begin();
      await bringing.put(files);
      return ((await (await bringing.keep()).json()) as { id: string }).id;
    },
    async end() {
      await services.close();
      readOnly.close();
      db.close();
      if (folder === undefined) rmSync(own, { recursive: true });
    },
  };
}

export const filePath = (id: string, name: string) =>
  `/api/bringings/${id}/files/${name.split('/').map(encodeURIComponent).join('/')}`;

export const raw = (body: string | Uint8Array): RequestInit => ({
  method: 'PUT',
  headers: { 'Content-Type': 'application/octet-stream' },
  body: typeof body === 'string' ? body : Uint8Array.from(body),
});

export const asJson = (method: string, value: unknown): RequestInit => ({
  method,
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify(value),
});

/** Resolves when a condition holds, looked at on every turn of the event loop. */
export async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setImmediate(resolve));
}

function writerHere(db: Database): Writer {
  const writing = writingTo(db);
  return {
    keepHouse: async (...args) => writing.keepHouse(...args),
    addVersion: async (...args) => writing.addVersion(...args),
    undoVersion: async (...args) => writing.undoVersion(...args),
    addLink: async (...args) => writing.addLink(...args),
    removeLink: async (...args) => writing.removeLink(...args),
    keepUntil: async (...args) => writing.keepUntil(...args),
    putAway: async (...args) => writing.putAway(...args),
    deleteHouse: async (...args) => writing.deleteHouse(...args),
    storeOutcome: async (...args) => writing.storeOutcome(...args),
    takeUpResult: async (...args) => writing.takeUpResult(...args),
    noteWatched: async (...args) => writing.noteWatched(...args),
    forgetWatched: async (...args) => writing.forgetWatched(...args),
  };
}
