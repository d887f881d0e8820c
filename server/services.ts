/** What the routes work with, put together once. */
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { type Assessments, assessmentQueue } from './jobs/assessments.ts';
import { type Bringings, bringingsIn, type Onto } from './jobs/bringings.ts';
import { type Demonstration, demonstrationHouse } from './jobs/demonstration.ts';
import { type AddLaterExport, laterExports } from './jobs/laterExports.ts';
import { type Calculate, Stopped } from './jobs/tasks.ts';
import { type Undoing, undoingIn } from './jobs/undoing.ts';
import { type Watching, watching } from './jobs/watch/watching.ts';
import type { Writer } from './jobs/writer.ts';
import type { HouseToStore } from './store/houseToStore.ts';
import type { Reading } from './store/reading.ts';

export interface Services {
  readonly reading: Reading;
  readonly writer: Writer;
  readonly assessments: Assessments;
  readonly bringings: Bringings;
  /** Adds a file to a stored house without anybody looking at it before. */
  readonly addLaterExport: AddLaterExport;
  /** Takes the latest version of a house back, which is then assessed again. */
  undo: Undoing['undo'];
  /** Null when no folder is watched. */
  readonly watching: Watching | null;
  /** Stored houses are assessed at once, this one too. */
  readonly demonstration: Demonstration;
  /** Folder of the built pages. */
  readonly pages: string;
  /** Aborted when the server stops, so that what would never end does. */
  readonly closing: AbortSignal;
  /** For the terminal: never outward. */
  tell(text: string): void;
  /** Stops all work; what was not ended begins again at the next start. */
  close(): Promise<void>;
}

export interface Parts {
  /** Path of the database file, which exists. */
  readonly database: string;
  readonly software: string;
  readonly reading: Reading;
  readonly writer: Writer;
  readonly calculate: Calculate;
  /** How many houses are assessed at a time. */
  readonly atOnce: number;
  /** Where house folders wait to be kept. */
  readonly bringingFolder: string;
  readonly demonstrationFolder: string;
  /** A folder in which houses' logs appear; null for none. */
  readonly watchedFolder: string | null;
  readonly pages: string;
  /** [bytes] */
  readonly largestFile: number;
  readonly closing: AbortSignal;
  tell(text: string): void;
}

export function createServices(parts: Parts): Services {
  const { database, reading, writer, calculate } = parts;
  const assessments = assessmentQueue(parts);
  const now = () => Date.now() / 1000;
  const store = async (house: HouseToStore, invented: boolean) => {
    const id = randomBytes(12).toString('base64url');
    await writer.keepHouse(id, house, invented, now());
    assessments.start(id);
    return id;
  };
  const storeOnto = async (house: HouseToStore, { id, content, posted }: Onto) => {
    if (house.content === content) return id; // the same files again change nothing
    await writer.addVersion(id, content, house, now(), posted);
    await assessments.bringUpToDate(id);
    return id;
  };
  const bringings = bringingsIn({
    folder: parts.bringingFolder,
    largestFile: parts.largestFile,
    database,
    reading,
    calculate,
    store: (house, onto) => (onto === null ? store(house, false) : storeOnto(house, onto)),
  });
  const demonstration = demonstrationHouse({
    folder: parts.demonstrationFolder,
    workFolder: join(parts.bringingFolder, 'demonstration'),
    database,
    calculate,
    store: (house) => store(house, true),
  });
  const addLaterExport = laterExports({ reading, bringings });
  const { watchedFolder: folder, tell } = parts;
  const watched =
    folder === null ? null : watching({ folder, reading, writer, bringings, addLaterExport, tell });
  const undoing = undoingIn({ workFolder: parts.bringingFolder, database, reading, writer, calculate });
  return {
    reading,
    writer,
    assessments,
    bringings,
    addLaterExport,
    watching: watched,
    async undo(id) {
      await undoing.undo(id);
      await assessments.bringUpToDate(id);
    },
    demonstration,
    pages: parts.pages,
    closing: parts.closing,
    tell: parts.tell,
    async close() {
      bringings.close();
      undoing.close();
      await watched?.close();
      await demonstration.close();
      await assessments.close();
    },
  };
}

/**
 * At a start: every assessment that does not hold any more, and on the very first the demonstration house, for which
 * nobody has to wait.
 */
export async function begin({
  reading,
  assessments,
  bringings,
  demonstration,
  watching,
  tell,
}: Services): Promise<void> {
  await bringings.clear();
  const houses = reading.houses();
  for (const house of houses) if (!assessments.isCurrent(house)) await assessments.bringUpToDate(house.id);
  watching?.start();
  if (houses.length > 0 || reading.demonstrationWasStored()) return;
  demonstration.store().catch((error: unknown) => {
    if (error instanceof Stopped) return;
    tell(`The demonstration house was not stored: ${error instanceof Error ? error.message : String(error)}`);
  });
}
