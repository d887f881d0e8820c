/** House folders on their way in: staged on disk, shown, then kept or dropped. Nothing of them is in the database. */
import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { BringingPreview } from '../api/shapes.ts';
import { machineFailure, Refused, refused } from '../refused.ts';
import type { HouseToStore } from '../store/houseToStore.ts';
import type { FolderPreview } from './previewFolder.ts';
import type { Calculate } from './tasks.ts';

interface Bringing {
  readonly folder: string;
  /** Paths by the names of the house folder. */
  readonly files: Map<string, string>;
  /** How many uploads have begun: the names of the files on disk, so that no name from outside is one. */
  uploads: number;
  preview: Promise<FolderPreview> | null;
  beingKept: boolean;
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

  function find(id: string): Bringing {
    const bringing = bringings.get(id);
    if (bringing === undefined)
      throw refused(
        404,
        'no-such-bringing',
        'This house folder is not waiting here.',
        'It was kept or dropped, or the program was started again: bring the folder once more.',
      );
    return bringing;
  }

  async function previewOf(id: string): Promise<FolderPreview> {
    const bringing = find(id);
    bringing.preview ??= calculate({ kind: 'preview', folder: new Map(bringing.files) }).result;
    try {
      return await bringing.preview;
    } catch (error) {
      bringing.preview = null;
      find(id); // when it was dropped meanwhile, that is what there is to say
      throw error;
    }
  }

  async function drop(id: string): Promise<void> {
    const bringing = find(id);
    bringings.delete(id);
    await rm(bringing.folder, { recursive: true, force: true });
  }

  return {
    /** Removes what an earlier run left behind. */
    clear: () => rm(folder, { recursive: true, force: true }),

    async start(): Promise<string> {
      const id = randomBytes(12).toString('base64url');
      const own = join(folder, id);
      await mkdir(own, { recursive: true });
      bringings.set(id, { folder: own, files: new Map(), uploads: 0, preview: null, beingKept: false });
      return id;
    },

    /** Takes a file in, in place of one of the same name. An upload that stops half-way leaves nothing. */
    async put(id: string, name: string, body: ReadableStream | null): Promise<BringingPreview> {
      const bringing = find(id);
      if (bringing.beingKept) throw beingKept();
      const path = join(bringing.folder, String(++bringing.uploads));
      try {
        await pipeline(
          body === null ? Readable.from([]) : Readable.fromWeb(body),
          atMost(largestFile),
          createWriteStream(path),
        );
        // It may have been dropped or begun to be kept meanwhile.
        if (find(id).beingKept) throw beingKept();
      } catch (error) {
        await rm(path, { force: true });
        throw error instanceof Refused ? error : (machineFailure(error) ?? stoppedHalfWay(name));
      }
      // One that it replaces stays on disk until the folder goes: an earlier preview may be reading it.
      bringing.files.set(name, path);
      bringing.preview = null;
      return { id, ...(await previewOf(id)) };
    },

    preview: async (id: string): Promise<BringingPreview> => ({ id, ...(await previewOf(id)) }),

    drop,

    /** Stores the house and answers its id; the folder is then gone from here. */
    async keep(id: string): Promise<string> {
      const bringing = find(id);
      const { ready, name, problems, missing } = await previewOf(id);
      if (!ready || name === null) throw notReady(problems, missing);
      if (bringing.beingKept || namesBeingKept.has(name)) throw beingKept();
      bringing.beingKept = true;
      namesBeingKept.add(name);
      try {
        const house = await calculate({ kind: 'read', folder: new Map(bringing.files) }).result;
        if (house === null) throw notReady(problems, missing);
        const kept = await store(house);
        await drop(id);
        return kept;
      } finally {
        bringing.beingKept = false;
        namesBeingKept.delete(name);
      }
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

const notReady = (problems: FolderPreview['problems'], missing: readonly string[]) =>
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
