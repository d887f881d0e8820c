/**
 * A watched folder, DIR/house/log.csv: what is complete is brought onto the house of that name, or as a new house.
 * It is looked at again and again rather than listened to: file systems do not all tell of changes (network drives
 * least), and of a change one would still have to wait for its end. Nothing in it is ever changed.
 */
import { setTimeout as pause } from 'node:timers/promises';
import type { Message } from '../../../src/assessment.ts';
import type { WatchedProblem } from '../../api/shapes.ts';
import type { Reading } from '../../store/reading.ts';
import type { Bringings } from '../bringings.ts';
import type { AddLaterExport } from '../laterExports.ts';
import { HOUSE_FILE } from '../stagedFolder.ts';
import type { Writer } from '../writer.ts';
import { type FoundFile, filesIn } from './filesIn.ts';
import {
  begunAs,
  houseFileApart,
  houseOf,
  isStamped,
  noHouse,
  severalHouses,
  stampAs,
} from './houseOfFolder.ts';
import { newHouse } from './newHouse.ts';
import { FILE_CHANGED, openedFile } from './openedFile.ts';
import { isOfTheMachine, isPassing, problemsOf } from './whyNotTaken.ts';

/** Between two looks [ms]. */
const PAUSE = 2000;
/** What has not changed for so long is complete [ms]. */
const QUIET = 5000;
/** After the machine refused, a full disk say, it is tried again [ms]. */
const TRY_AGAIN = 60_000;

export interface WatchNeeds {
  readonly folder: string;
  readonly reading: Reading;
  readonly writer: Writer;
  readonly bringings: Bringings;
  readonly addLaterExport: AddLaterExport;
  tell(text: string): void;
}

export type Watching = ReturnType<typeof watching>;

export function watching(needs: WatchNeeds) {
  const { folder: watched, reading, writer, addLaterExport, tell } = needs;
  /** Since when each file has been as it is [ms]. */
  let seen = new Map<string, { readonly stamp: string; readonly since: number }>();
  const done = new Map(reading.watched().map((it) => [it.path, it]));
  /** When what the machine refused is tried again [ms]. */
  const again = new Map<string, number>();
  /** What was told last of each file, and of which state of it. */
  const told = new Map<string, string>();
  let time = 0;
  let unreadable = '';
  const closing = new AbortController();
  let ended: Promise<void> = Promise.resolve();

  /** One look at the folder; whoever looks says what time it is [ms]. */
  async function look(now: number): Promise<void> {
    time = now;
    for (const [path, at] of [...again]) if (now >= at && again.delete(path)) done.delete(path);
    const files = await filesIn(watched);
    seen = new Map(
      files.map(({ path, stamp }) => {
        const before = seen.get(path);
        return [path, before?.stamp === stamp ? before : { stamp, since: now }];
      }),
    );
    const isComplete = ({ path }: FoundFile) => now - (seen.get(path)?.since ?? now) >= QUIET;
    await forgetGone(files);
    for (const folder of new Set(files.map((it) => it.folder))) {
      if (closing.signal.aborted) return;
      const own = files.filter((it) => it.folder === folder);
      await take(folder, own, houseOfFolder(folder), isComplete);
    }
  }

  async function take(
    folder: string,
    files: readonly FoundFile[],
    house: string | 'several' | null,
    isComplete: (file: FoundFile) => boolean,
  ): Promise<void> {
    const begins = files.find(({ name }) => name === HOUSE_FILE);
    if (house !== null && house !== 'several') {
      for (const file of files)
        if (file !== begins && isComplete(file))
          await once(file.path, `${file.stamp} ${house}`, async () => {
            await addLaterExport(house, file.name, openedFile(watched, file), 'file');
          });
      if (begins !== undefined && isComplete(begins)) await tellOfChange(begins, house);
    } else if (house === null && begins !== undefined && !wasBegun(begins)) {
      if (!files.every(isComplete)) return;
      const all = files.map(({ path, stamp }) => `${path} ${stamp}`).join('; ');
      const begun = await once(begins.path, all, () => newHouse(files, needs));
      if (begun === null) return;
      await note(begins.path, stampAs(begins.stamp, begun.id), []);
      for (const file of begun.named) await note(file.path, `${file.stamp} ${begun.id}`, []);
    } else
      for (const file of files)
        if (file !== begins && isComplete(file))
          await once(file.path, `${file.stamp} ${house}`, async () => {
            throw house === null ? noHouse(folder) : severalHouses(folder);
          });
  }

  /** A house that was begun from this very file and deleted does not come back by itself. */
  const wasBegun = ({ path, stamp }: FoundFile) => {
    const before = done.get(path);
    return before !== undefined && isStamped(before.stamp, stamp) && before.problems.length === 0;
  };

  /** As the house is called, else as its house was begun from it, whatever either is called by now. */
  const houseOfFolder = (folder: string) =>
    houseOf(folder, reading.houses(), begunAs(done.get(`${folder}/${HOUSE_FILE}`)?.stamp));

  /** The house has gone its own way since it was begun: what changes in the file is for a person to bring. */
  async function tellOfChange(begins: FoundFile, house: string): Promise<void> {
    const { path, stamp } = begins;
    const before = done.get(path);
    if (before !== undefined && isStamped(before.stamp, stamp) && begunAs(before.stamp) === house) return;
    const bytes = await new Response(openedFile(watched, begins)).arrayBuffer().catch(() => null);
    if (bytes === null) return; // it is being changed
    const isSame = reading.json(house)?.toString() === Buffer.from(bytes).toString();
    const problems = isSame ? [] : [houseFileApart(path)];
    tellOf(path, problems);
    await note(path, stampAs(stamp, house), problems);
  }

  async function note(path: string, stamp: string, problems: readonly Message[]): Promise<void> {
    done.set(path, { path, stamp, problems });
    await writer.noteWatched(path, stamp, problems);
  }

  /** Does it unless it was done with this stamp before; what is wrong is noted and told. Null when nothing was done. */
  async function once<T>(path: string, stamp: string, act: () => Promise<T>): Promise<T | null> {
    if (done.get(path)?.stamp === stamp) return null;
    try {
      const result = await act();
      told.delete(path);
      await note(path, stamp, []);
      return result;
    } catch (error) {
      if (closing.signal.aborted) return null;
      const problems = problemsOf(error);
      if (isPassing(error)) {
        for (const it of problems) if (it.code === FILE_CHANGED) tellOf(it.where?.file ?? path, [it]);
        return null;
      }
      const all = `${stamp} ${problems.map(({ text }) => text).join(' ')}`;
      if (told.get(path) !== all) tellOf(path, problems);
      told.set(path, all);
      if (isOfTheMachine(error)) {
        done.set(path, { path, stamp, problems });
        again.set(path, time + TRY_AGAIN);
      } else await note(path, stamp, problems);
      return null;
    }
  }

  function tellOf(path: string, problems: readonly Message[]): void {
    for (const { text, remedy = '' } of problems) tell(`${watched}/${path}: ${text} ${remedy}`.trim());
  }

  /** A file that is gone is forgotten; but where nothing is left, a drive is perhaps only not connected. */
  async function forgetGone(files: readonly FoundFile[]): Promise<void> {
    const there = new Set(files.map(({ path }) => path));
    for (const { path, problems } of [...done.values()])
      if (!there.has(path) && (problems.length > 0 || files.length > 0)) {
        done.delete(path);
        told.delete(path);
        await writer.forgetWatched(path);
      }
  }

  async function goOn(): Promise<void> {
    while (!closing.signal.aborted) {
      try {
        await look(performance.now());
        unreadable = '';
      } catch (error) {
        const text = error instanceof Error ? error.message : String(error);
        if (text !== unreadable) tell(`The watched folder ${watched} cannot be looked at: ${text}`);
        unreadable = text;
      }
      await pause(PAUSE, undefined, { signal: closing.signal }).catch(() => {});
    }
  }

  return {
    folder: watched,
    look,
    /** The files that were not taken, and why. */
    problems: () =>
      Array.from(done.values()).flatMap(({ path, problems }): WatchedProblem[] => {
        const house = houseOfFolder(path.split('/')[0]);
        return problems.length === 0 ? [] : [{ path, house: house === 'several' ? null : house, problems }];
      }),
    start(): void {
      ended = goOn();
    },
    /** Resolves when nothing is looked at any more. */
    async close(): Promise<void> {
      closing.abort();
      await ended;
    },
  };
}
