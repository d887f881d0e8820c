/** House folders on their way in: staged on disk, shown, then kept or dropped. Nothing of them is in the database. */
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { BringingPreview, BringingProgress, TakenFile, Work } from '../api/shapes.ts';
import { houseChanged, machineFailure, noSuchHouse, Refused } from '../refused.ts';
import type { HouseToStore } from '../store/houseToStore.ts';
import type { Reading } from '../store/reading.ts';
import {
  beingKept,
  filesGone,
  noSuchBringing,
  notReady,
  stoppedHalfWay,
  stopping,
  tooLarge,
} from './bringingRefusals.ts';
import type { PreparedFolder } from './prepareFolder.ts';
import { freeName, HOUSE_FILE, type StagedFile } from './stagedFolder.ts';
import { reading as readingWork } from './stepWords.ts';
import { type Calculate, type Calculation, Stopped } from './tasks.ts';
import { watchers } from './watchers.ts';

interface Bringing {
  readonly folder: string;
  readonly onto: Onto | null;
  /** By the names of the house folder. */
  readonly files: Map<string, StagedFile>;
  /** How many uploads and readings have begun: the names on disk, so that no name from outside is one. */
  begun: number;
  /** Of the files as they are now; null until it is asked for. */
  reading: ReadingOfFolder | null;
  beingKept: boolean;
}

/** A stored house that is added to, as it was when that began. */
export interface Onto {
  readonly id: string;
  readonly content: string;
  /** The UTC day (days since 1970) on which what is added is posted; null when a person brings it. */
  readonly posted: number | null;
  /** Whether nobody looks at what it changes before it is kept. */
  readonly unseen: boolean;
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
  /** Path of the database file. */
  readonly database: string;
  readonly reading: Reading;
  readonly calculate: Calculate;
  /** Stores a house, or another version of one, and answers its id. */
  store(house: HouseToStore, onto: Onto | null): Promise<string>;
}

export type Bringings = ReturnType<typeof bringingsIn>;

export function bringingsIn({ folder, largestFile, database, reading, calculate, store }: Needs) {
  const bringings = new Map<string, Bringing>();
  const namesBeingKept = new Set<string>();
  const { changed, watch } = watchers();
  let closed = false;

  function find(id: string): Bringing {
    const bringing = bringings.get(id);
    if (bringing === undefined) throw noSuchBringing();
    return bringing;
  }

  /** The stored house that is added to; what was begun on it holds only as long as it stays as it was. */
  function housePreviewed({ onto }: Bringing): BringingPreview['onto'] {
    if (onto === null) return null;
    const house = reading.house(onto.id);
    if (house === null) throw noSuchHouse();
    if (house.content !== onto.content) throw houseChanged();
    return { id: house.id, name: house.name };
  }

  /** As the house is to call it: a name that another file has already is never taken. */
  function nameFor(sentAs: string, { onto, files }: Bringing): string {
    for (const [name, file] of files) if (file.sentAs === sentAs) return name;
    if (onto === null || sentAs === HOUSE_FILE) return sentAs;
    const stored = new Set(reading.files(onto.id).map(({ file }) => file));
    return freeName(sentAs, (name) => stored.has(name) || files.has(name));
  }

  /** Everyone who asks meanwhile waits for the same reading; a file that comes meanwhile has it begun anew. */
  async function prepared(id: string): Promise<PreparedFolder> {
    for (;;) {
      if (closed) throw stopping();
      const bringing = find(id); // when it was dropped meanwhile, that is what there is to say
      bringing.reading ??= beginReading(id, bringing);
      const current = bringing.reading;
      try {
        return await current.calculation.result;
      } catch (error) {
        if (bringing.reading === current) forgetReading(bringing);
        if (!(error instanceof Stopped)) throw isGone(error) ? filesGone() : error;
      }
    }
  }

  function beginReading(id: string, bringing: Bringing): ReadingOfFolder {
    const into = join(bringing.folder, String(++bringing.begun));
    const { files, onto } = bringing;
    const task = { kind: 'prepare', database, folder: new Map(files), onto, into } as const;
    const calculation = calculate(task, (step) => {
      begun.work = readingWork(step);
      changed(id);
    });
    const begun: ReadingOfFolder = { calculation, into, work: { done: 0, what: 'Reading house.json.' } };
    const done = () => {
      begun.work = null;
      changed(id);
    };
    calculation.result.then(done, done);
    changed(id);
    return begun;
  }

  function forgetReading(bringing: Bringing): void {
    const { reading: forgotten } = bringing;
    bringing.reading = null;
    if (forgotten === null) return;
    forgotten.calculation.stop();
    const remove = () => rm(forgotten.into, { recursive: true, force: true });
    forgotten.calculation.result.then(remove, remove).catch(() => {}); // else it goes with the whole folder
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

    /**
     * @param ontoId the stored house that is added to; null for a house of its own
     * @param sent how it comes when no person brings it and looks at it first
     */
    async start(ontoId: string | null, sent: Pick<Onto, 'posted'> | null = null): Promise<string> {
      const house = ontoId === null ? null : reading.house(ontoId);
      if (ontoId !== null && house === null) throw noSuchHouse();
      const posted = sent?.posted ?? null;
      const onto = house && { id: house.id, content: house.content, posted, unseen: sent !== null };
      const id = randomBytes(12).toString('base64url');
      const own = join(folder, id);
      await mkdir(own, { recursive: true });
      bringings.set(id, { folder: own, onto, files: new Map(), begun: 0, reading: null, beingKept: false });
      return id;
    },

    /** Takes a file in, in place of one of the same name. An upload that stops half-way leaves nothing. */
    async put(id: string, sentAs: string, body: ReadableStream | null): Promise<TakenFile> {
      const bringing = find(id);
      if (bringing.beingKept) throw beingKept();
      const path = join(bringing.folder, String(++bringing.begun));
      const file = createWriteStream(path);
      try {
        await pipeline(body === null ? Readable.from([]) : Readable.fromWeb(body), atMost(largestFile), file);
        // It may have been dropped or begun to be kept meanwhile.
        if (find(id).beingKept) throw beingKept();
      } catch (error) {
        await rm(path, { force: true }).catch(() => {}); // else it goes with the whole folder
        if (error instanceof Refused) throw error;
        throw isGone(error) ? filesGone() : (machineFailure(error) ?? stoppedHalfWay(sentAs));
      }
      forgetReading(bringing);
      const name = nameFor(sentAs, bringing);
      const replaced = bringing.files.get(name);
      bringing.files.set(name, { path, sentAs });
      if (replaced !== undefined) await rm(replaced.path, { force: true });
      return { name, bytes: file.bytesWritten };
    },

    async preview(id: string): Promise<BringingPreview> {
      const onto = housePreviewed(find(id));
      const { preview } = await prepared(id);
      return { id, onto, ...preview };
    },

    /** The file, posted before, into which the one that is posted is joined; null where it stays one of its own. */
    async joinedInto(id: string): Promise<string | null> {
      return (await prepared(id)).joinedInto;
    },

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

    /** Drops all that is on its way to a house that is gone. */
    async dropOnto(house: string): Promise<void> {
      for (const [id, { onto, beingKept }] of [...bringings])
        if (onto?.id === house && !beingKept) await remove(id);
    },

    /** Stores the house and answers its id; the folder is then gone from here. */
    async keep(id: string): Promise<string> {
      housePreviewed(find(id));
      const { house, preview } = await prepared(id);
      const bringing = find(id);
      if (house === null) throw notReady(preview.problems, preview.missing);
      if (bringing.beingKept || namesBeingKept.has(house.name)) throw beingKept();
      bringing.beingKept = true;
      namesBeingKept.add(house.name);
      try {
        const kept = await store(house, bringing.onto);
        await remove(id);
        return kept;
      } catch (error) {
        if (!isGone(error)) throw error;
        forgetReading(bringing);
        throw filesGone();
      } finally {
        bringing.beingKept = false;
        namesBeingKept.delete(house.name);
      }
    },

    /** Stops every reading; none is begun any more. */
    close(): void {
      closed = true;
      for (const bringing of bringings.values()) bringing.reading?.calculation.stop();
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

const isGone = (error: unknown) => error instanceof Error && 'code' in error && error.code === 'ENOENT';
