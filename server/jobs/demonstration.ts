/** The demonstration house: read from its folder and stored, on the first start or when it is wanted again. */
import { readdirSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { HouseToStore } from '../store/houseToStore.ts';
import type { StagedFolder } from './stagedFolder.ts';
import type { Calculate } from './tasks.ts';

interface Needs {
  readonly folder: string;
  /** For its readings on their way into the store; removed afterwards. */
  readonly workFolder: string;
  /** Path of the database file. */
  readonly database: string;
  readonly calculate: Calculate;
  /** Stores a house and answers its id. */
  store(house: HouseToStore): Promise<string>;
}

export type Demonstration = ReturnType<typeof demonstrationHouse>;

export function demonstrationHouse({ folder, workFolder, database, calculate, store }: Needs) {
  let coming: { readonly id: Promise<string>; stop(): void } | null = null;

  function begin() {
    const preparing = calculate({
      kind: 'prepare',
      database,
      folder: folderAt(folder),
      onto: null,
      into: workFolder,
    });
    const id = preparing.result
      .then(({ house }) => {
        if (house === null) throw new Error(`${folder} holds no house that can be assessed`);
        return store(house);
      })
      .finally(async () => {
        coming = null;
        await rm(workFolder, { recursive: true, force: true });
      });
    return { id, stop: preparing.stop };
  }

  return {
    isComing: () => coming !== null,
    /** Stores it, once when asked twice at a time, and answers its id. */
    async store(): Promise<string> {
      coming ??= begin();
      return coming.id;
    },
    /** Resolves when nothing is under way any more. */
    async close(): Promise<void> {
      coming?.stop();
      await coming?.id.catch(() => {});
    },
  };
}

const folderAt = (path: string): StagedFolder =>
  new Map(readdirSync(path).map((name) => [name, { path: join(path, name), sentAs: name }]));
