/** House folders on their way in: staged on disk, shown, then kept or dropped. Nothing of them is in the database. */
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { BringingPreview, BringingProgress, TakenFile, Work } from '../api/shapes.ts';
import { machineFailure, Refused, refused } from '../refused.ts';
import type { HouseToStore } from '../store/houseToStore.ts';
import type { PreparedFolder } from './prepareFolder.ts';
import { reading as readingWork } from './stepWords.ts';
import { type Calculate, type Calculation, Stopped } from './tasks.ts';
import { watchers } from './watchers.ts';

interface Bringing {
  readonly folder: string;
  /** Paths by the names of the house folder. */
  readonly files: Map<string, string>;
  /** How many uploads and readings have begun: the names on disk, so that no name from outside is one. */
  begun: number;
  /** Of the files as they are now; null until it is asked for. */
  reading: ReadingOfFolder | null;
  beingKept: boolean;
}

/** The folder being read, or read: for the preview, and to be stored as it was read. */
interface ReadingOfFolder {
  readonly calculation: Calculation<PreparedFolder>;
  /** Holds the readings that are to be stored. */
  readonly into: string;
  /** Null once it is done. */
  work: Work | null;
}

interface Needs {
  /** Holds a folder for each; emptied by `clear`. */
  readonly folder: string;
  /** [bytes] */
  readonly largestFile: number;
  readonly calculate: Calculate;
  /** Stores a house and answers its id. */
  store(house: HouseToStore): Promise<string>;
}

export type Bringings = ReturnType<typeof bringingsIn>;

export function bringingsIn({ folder, largestFile, calculate, store }: Needs) {
  const bringings = new Map<string, Bringing>();
  const namesBeingKept = new Set<string>();
  const { changed, watch } = watchers();

  function find(id: string): Bringing {
    const bringing = bringings.get(id);
    if (bringing === undefined) throw noSuchBringing();
    return bringing;
  }

  /** Everyone who asks meanwhile waits for the same reading; a file that comes meanwhile has it begun anew. */
  async function prepared(id: string): Promise<PreparedFolder> {
    for (;;) {
      const bringing = find(id); // when it was dropped meanwhile, that is what there is to say
      bringing.reading ??= beginReading(id, bringing);
      const { reading } = bringing;
      try {
        return await reading.calculation.result;
      } catch (error) {
        if (bringing.reading === reading) forgetReading(bringing);
        if (!(error instanceof Stopped)) throw error;
      }
    }
  }

  function beginReading(id: string, bringing: Bringing): ReadingOfFolder {
    const into = join(bringing.folder, String(++bringing.begun));
    const calculation = calculate({ kind: 'prepare', folder: new Map(bringing.files), into }, (step) => {
      reading.work = readingWork(step);
      changed(id);
    });
    const reading: ReadingOfFolder = { calculation, into, work: { done: 0, what: 'Reading house.json.' } };
    const done = () => {
      reading.work = null;
      changed(id);
    };
    calculation.result.then(done, done);
    changed(id);
    return reading;
  }

  function forgetReading(bringing: Bringing): void {
    const { reading } = bringing;
    bringing.reading = null;
    if (reading === null) return;
    reading.calculation.stop();
    const remove = () => rm(reading.into, { recursive: true, force: true });
    reading.calculation.result.then(remove, remove).catch(() => {}); // else it goes with the whole folder
  }

  async function remove(id: string): Promise<void> {
    const bringing = find(id);
    bringings.delete(id);
    bringing.reading?.calculation.stop();
    changed(id);
    await rm(bringing.folder, { recursive: true, force: true });
  }

  return {
    /** Removes what an earlier run left behind. */
    clear: () => rm(folder, { recursive: true, force: true }),

    async start(): Promise<string> {
      const id = randomBytes(12).toString('base64url');
      const own = join(folder, id);
      await mkdir(own, { recursive: true });
      bringings.set(id, { folder: own, files: new Map(), begun: 0, reading: null, beingKept: false });
      return id;
    },

    /** Takes a file in, in place of one of the same name. An upload that stops half-way leaves nothing. */
    async put(id: string, name: string, body: ReadableStream | null): Promise<TakenFile> {
      const bringing = find(id);
      if (bringing.beingKept) throw beingKept();
      const path = join(bringing.folder, String(++bringing.begun));
      const file = createWriteStream(path);
      try {
        await pipeline(body === null ? Readable.from([]) : Readable.fromWeb(body), atMost(largestFile), file);
        // It may have been dropped or begun to be kept meanwhile.
        if (find(id).beingKept) throw beingKept();
      } catch (error) {
        await rm(path, { force: true });
        throw error instanceof Refused ? error : (machineFailure(error) ?? stoppedHalfWay(name));
      }
      forgetReading(bringing);
      const replaced = bringing.files.get(name);
      bringing.files.set(name, path);
      if (replaced !== undefined) await rm(replaced, { force: true });
      return { name, bytes: file.bytesWritten };
    },

    preview: async (id: string): Promise<BringingPreview> => ({ id, ...(await prepared(id)).preview }),

    /** How far the reading has come; null when the folder is gone. */
    progress(id: string): BringingProgress | null {
      const bringing = bringings.get(id);
      return bringing === undefined ? null : { reading: bringing.reading?.work ?? null };
    },

    watch,

    async drop(id: string): Promise<void> {
      if (find(id).beingKept) throw beingKept();
      await remove(id);
    },

    /** Stores the house and answers its id; the folder is then gone from here. */
    async keep(id: string): Promise<string> {
      const { house, preview } = await prepared(id);
      const bringing = find(id);
      if (house === null) throw notReady(preview.problems, preview.missing);
      if (bringing.beingKept || namesBeingKept.has(house.name)) throw beingKept();
      bringing.beingKept = true;
      namesBeingKept.add(house.name);
      try {
        const kept = await store(house);
        await remove(id);
        return kept;
      } finally {
        bringing.beingKept = false;
        namesBeingKept.delete(house.name);
      }
    },

    /** Stops every reading. */
    close(): void {
      for (const { reading } of bringings.values()) reading?.calculation.stop();
    },
  };
}

function atMost(bytes: number): Transform {
  let seen = 0;
  return new Transform({
    transform(chunk: Uint8Array, _, done) {
      seen += chunk.length;
      if (seen > bytes) done(tooLarge(bytes));
      else done(null, chunk);
    },
  });
}

export const tooLarge = (bytes: number) =>
  refused(
    413,
    'too-large',
    `This is larger than ${Math.round(bytes / 1024 / 1024)} MB, the most that is taken.`,
    'Split the record into several houses, or export it at a longer interval.',
  );

export const noSuchBringing = () =>
  refused(
    404,
    'no-such-bringing',
    'This house folder is not waiting here.',
    'It was kept or dropped, or the program was started again: bring the folder once more.',
  );

const beingKept = () =>
  refused(
    409,
    'being-kept',
    'A house of this name is being stored right now.',
    'Wait until it is in the list of houses, then try again.',
  );

const stoppedHalfWay = (file: string) =>
  new Refused(400, [
    {
      code: 'upload-stopped',
      text: 'The upload stopped before its end; nothing of the file was kept.',
      where: { file },
      remedy: 'Send the file again.',
    },
  ]);

const notReady = (problems: BringingPreview['problems'], missing: readonly string[]) =>
  new Refused(409, [
    ...(problems.length > 0
      ? problems
      : [
          {
            code: 'not-ready',
            text: `This cannot be kept yet: an inside or an outdoor temperature is missing. Not come yet: ${missing.join(', ')}.`,
            remedy: 'Add these files, or take them out of house.json.',
          },
        ]),
  ]);
