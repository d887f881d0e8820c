/** What the routes work with, put together once. */
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { type Assessments, assessmentQueue } from './jobs/assessments.ts';
import { type Bringings, bringingsIn } from './jobs/bringings.ts';
import { type Demonstration, demonstrationHouse } from './jobs/demonstration.ts';
import { type Calculate, Stopped } from './jobs/tasks.ts';
import type { Writer } from './jobs/writer.ts';
import type { HouseToStore } from './store/houseToStore.ts';
import type { Reading } from './store/reading.ts';

export interface Services {
  readonly reading: Reading;
  readonly writer: Writer;
  readonly assessments: Assessments;
  readonly bringings: Bringings;
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
  /** Where house folders wait to be kept. */
  readonly bringingFolder: string;
  readonly demonstrationFolder: string;
  readonly pages: string;
  /** [bytes] */
  readonly largestFile: number;
  readonly closing: AbortSignal;
  tell(text: string): void;
}

export function createServices(parts: Parts): Services {
  const { reading, writer, calculate } = parts;
  const assessments = assessmentQueue(parts);
  const store = async (house: HouseToStore, invented: boolean) => {
    const id = randomBytes(12).toString('base64url');
    await writer.keepHouse(id, house, invented);
    assessments.start(id);
    return id;
  };
  const bringings = bringingsIn({
    folder: parts.bringingFolder,
    largestFile: parts.largestFile,
    calculate,
    store: (house) => store(house, false),
  });
  const demonstration = demonstrationHouse({
    folder: parts.demonstrationFolder,
    workFolder: join(parts.bringingFolder, 'demonstration'),
    calculate,
    store: (house) => store(house, true),
  });
  return {
    reading,
    writer,
    assessments,
    bringings,
    demonstration,
    pages: parts.pages,
    closing: parts.closing,
    tell: parts.tell,
    async close() {
      bringings.close();
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
  tell,
}: Services): Promise<void> {
  await bringings.clear();
  const houses = reading.houses();
  for (const house of houses) if (!assessments.isCurrent(house)) assessments.start(house.id);
  if (houses.length > 0 || reading.demonstrationWasStored()) return;
  demonstration.store().catch((error: unknown) => {
    if (error instanceof Stopped) return;
    tell(`The demonstration house was not stored: ${error instanceof Error ? error.message : String(error)}`);
  });
}
