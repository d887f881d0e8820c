/** A house folder on its way in: sent file by file, read once all have come, shown, then kept or dropped. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BringingPreview, Work } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import {
  dropBringing,
  followReading,
  getBringing,
  keepBringing,
  problemsOf,
  sendFile,
  startBringing,
} from '../api.ts';
import { houseFolder, type PathOf } from './houseFolder.ts';

export interface SentFile extends PathOf<File> {
  readonly state: 'waiting' | 'sending' | 'come' | 'not come';
}

export interface Bringing {
  /** Every file that was given, and what became of it. */
  readonly files: readonly SentFile[];
  readonly sending: Work | null;
  readonly reading: Work | null;
  readonly preview: BringingPreview | null;
  readonly keeping: boolean;
  readonly problems: readonly Message[];
  readonly send: (found: readonly PathOf<File>[]) => Promise<void>;
  /** Sends again what has not come. */
  readonly sendRest: () => Promise<void>;
  /** Stops the sending; what has come stays. */
  readonly stop: () => void;
  /** Leaves nothing of what has come. */
  readonly drop: () => Promise<void>;
  readonly keep: () => Promise<void>;
  /** Shows what is the matter with what was given, before anything of it is sent. */
  readonly complain: (problem: Message) => void;
}

/** After these, no other file of the folder has better prospects. */
const HOPELESS: readonly string[] = ['server-not-reached', 'no-such-bringing'];

/** @param kept called with the id of the house once it is stored */
export function useBringing(kept: (id: string) => void): Bringing {
  const [files, setFiles] = useState<readonly SentFile[]>([]);
  const [sending, setSending] = useState<Work | null>(null);
  const [reading, setReading] = useState<Work | null>(null);
  const [preview, setPreview] = useState<BringingPreview | null>(null);
  const [keeping, setKeeping] = useState(false);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const id = useRef<string | null>(null);
  const busy = useRef(false);
  const sendingStop = useRef(new AbortController());
  const readingStop = useRef(new AbortController());

  // Whoever leaves the page without keeping the house leaves nothing behind.
  useEffect(
    () => () => {
      sendingStop.current.abort();
      readingStop.current.abort();
      if (id.current !== null) dropBringing(id.current).catch(() => {});
    },
    [],
  );

  const mark = (state: SentFile['state'], which: (file: SentFile) => boolean) =>
    setFiles((all) => all.map((file) => (which(file) ? { ...file, state } : file)));

  const send = (found: readonly PathOf<File>[]) => sendAs(houseFolder(found));
  const sendRest = () => sendAs(files.filter(({ state }) => state === 'not come'));

  /** @param given by the paths of the house folder */
  async function sendAs(given: readonly PathOf<File>[]): Promise<void> {
    if (given.length === 0 || busy.current) return;
    busy.current = true;
    readingStop.current.abort();
    setReading(null);
    setProblems([]);
    const paths = new Set(given.map(({ path }) => path));
    const waiting = given.map(({ path, file }): SentFile => ({ path, file, state: 'waiting' }));
    setFiles((all) => [...all.filter(({ path }) => !paths.has(path)), ...waiting]);
    setProblems(await sendAll(given));
    mark('not come', ({ state }) => state === 'waiting' || state === 'sending');
    setSending(null);
    busy.current = false;
    await read();
  }

  /** @returns what was refused */
  async function sendAll(given: readonly PathOf<File>[]): Promise<readonly Message[]> {
    sendingStop.current = new AbortController();
    const { signal } = sendingStop.current;
    const refused: Message[] = [];
    const all = given.reduce((sum, { file }) => sum + file.size, 0) || 1;
    let before = 0;
    try {
      id.current ??= (await startBringing()).id;
    } catch (thrown) {
      return problemsOf(thrown);
    }
    for (const [i, { path, file }] of given.entries()) {
      if (signal.aborted || id.current === null) break;
      const tell = (share: number) =>
        setSending({
          what: `Sending ${path}, file ${i + 1} of ${given.length}.`,
          done: (before + share * file.size) / all,
        });
      tell(0);
      mark('sending', (it) => it.path === path);
      try {
        await sendFile(id.current, path, file, { tell, signal });
        mark('come', (it) => it.path === path);
      } catch (thrown) {
        if (signal.aborted) break;
        const why = problemsOf(thrown);
        refused.push(...why);
        mark('not come', (it) => it.path === path);
        if (why.some(({ code }) => HOPELESS.includes(code))) {
          lose(why);
          break;
        }
      }
      before += file.size;
    }
    return refused;
  }

  /** A folder that the program has forgotten is to be sent whole, when it is sent again. */
  function lose(why: readonly Message[]): void {
    if (why.every(({ code }) => code !== 'no-such-bringing')) return;
    id.current = null;
    setPreview(null);
    mark('not come', () => true);
  }

  async function read(): Promise<void> {
    const own = id.current;
    if (own === null) return;
    readingStop.current = new AbortController();
    const { signal } = readingStop.current;
    setReading({ done: 0, what: 'Reading what has come.' });
    const unfollow = followReading(own, (progress) => {
      if (progress.reading !== null && !signal.aborted) setReading(progress.reading);
    });
    try {
      const understood = await getBringing(own, signal);
      if (!signal.aborted) setPreview(understood);
    } catch (thrown) {
      if (!signal.aborted) setProblems((before) => [...before, ...problemsOf(thrown)]);
    }
    unfollow();
    if (!signal.aborted) setReading(null);
  }

  async function drop(): Promise<void> {
    const own = id.current;
    id.current = null;
    sendingStop.current.abort();
    readingStop.current.abort();
    setReading(null);
    setPreview(null);
    setProblems([]);
    setFiles([]);
    if (own !== null) await dropBringing(own).catch((thrown) => setProblems(problemsOf(thrown)));
  }

  async function keep(): Promise<void> {
    const own = id.current;
    if (own === null) return;
    setKeeping(true);
    setProblems([]);
    try {
      const stored = await keepBringing(own);
      id.current = null;
      kept(stored.id);
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setKeeping(false);
  }

  const complain = (problem: Message) => setProblems([problem]);
  const stop = () => sendingStop.current.abort();
  return { files, sending, reading, preview, keeping, problems, send, sendRest, stop, drop, keep, complain };
}
