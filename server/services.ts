/** What the routes work with, put together once. */
import { randomBytes } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Assessments, assessmentQueue } from './jobs/assessments.ts';
import { type Bringings, bringingsIn } from './jobs/bringings.ts';
import type { StagedFolder } from './jobs/stagedFolder.ts';
import type { Calculate } from './jobs/tasks.ts';
import type { Writer } from './jobs/writer.ts';
import type { HouseToStore } from './store/houseToStore.ts';
import type { Reading } from './store/reading.ts';

export interface Services {
  readonly reading: Reading;
  readonly writer: Writer;
  readonly assessments: Assessments;
  readonly bringings: Bringings;
  /** Folder of the built pages. */
  readonly pages: string;
  /** Aborted when the server stops, so that what would never end does. */
  readonly closing: AbortSignal;
  /** Stores the demonstration house, once when asked twice at a time; has it assessed and answers its id. */
  storeDemonstration(): Promise<string>;
  /** For the terminal: never outward. */
  tell(text: string): void;
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
  const demonstration = async () => {
    const folder = folderAt(parts.demonstrationFolder);
    const house = await calculate({ kind: 'read', folder }).result;
    if (house === null) throw new Error(`${parts.demonstrationFolder} holds no valid house.json`);
    return store(house, true);
  };
  let storing: Promise<string> | null = null;
  return {
    reading,
    writer,
    assessments,
    bringings: bringingsIn({
      folder: parts.bringingFolder,
      largestFile: parts.largestFile,
      calculate,
      store: (house) => store(house, false),
    }),
    pages: parts.pages,
    closing: parts.closing,
    tell: parts.tell,
    storeDemonstration() {
      storing ??= demonstration().finally(() => {
        storing = null;
      });
      return storing;
    },
  };
}

/** At a start: the demonstration house on the very first, and every assessment that does not hold any more. */
export async function begin(services: Services): Promise<void> {
  const { reading, assessments, bringings, storeDemonstration } = services;
  await bringings.clear();
  const houses = reading.houses();
  for (const house of houses) if (!assessments.isCurrent(house)) assessments.start(house.id);
  if (houses.length === 0 && !reading.demonstrationWasStored()) await storeDemonstration();
}

const folderAt = (path: string): StagedFolder =>
  new Map(readdirSync(path).map((name) => [name, join(path, name)]));
