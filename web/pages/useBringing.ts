/** A house on its way in: sent file by file, read once all have come, read again as it is answered for, then kept. */
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
  /** The house.json that was brought last; null while none was. */
  readonly broughtHouse: { readonly text: string } | null;
  /** What was written is not read yet. */
  readonly writing: boolean;
  readonly send: (found: readonly PathOf<File>[]) => Promise<void>;
  /** Puts this house.json in the place of the one that is there, and reads all again where that shows anything. */
  readonly write: (text: string, again: boolean) => Promise<void>;
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

/**
 * @param onto the stored house that is added to; null for a house of its own
 * @param kept called with the id of the house once it is stored
 */
export function useBringing(onto: string | null, kept: (id: string) => void): Bringing {
  const [files, setFiles] = useState<readonly SentFile[]>([]);
  const [sending, setSending] = useState<Work | null>(null);
  const [reading, setReading] = useState<Work | null>(null);
  const [preview, setPreview] = useState<BringingPreview | null>(null);
  const [keeping, setKeeping] = useState(false);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const [broughtHouse, setBroughtHouse] = useState<Bringing['broughtHouse']>(null);
  const [writing, setWriting] = useState(false);
  const id = useRef<string | null>(null);
  const busy = useRef(false);
  /** What was written last, and what of it could not be sent yet. */
  const written = useRef<string | null>(null);
  const toWrite = useRef<string | null>(null);
  const writes = useRef(0);
  const putting = useRef<Promise<void> | null>(null);
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

  const sendRest = () => sendAs(files.filter(({ state }) => state === 'not come'));
  async function send(found: readonly PathOf<File>[]): Promise<void> {
    const given = houseFolder(found);
    const house = given.find(({ path }) => path === 'house.json');
    if (house !== undefined && !busy.current) {
      written.current = null;
      toWrite.current = null;
      setBroughtHouse({ text: await house.file.text() });
    }
    await sendAs(given);
  }

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
    await putting.current;
    setProblems(await sendAll(given));
    mark('not come', ({ state }) => state === 'waiting' || state === 'sending');
    setSending(null);
    busy.current = false;
    await put();
    await read();
    if (writes.current === 0) setWriting(false);
  }

  async function write(text: string, again: boolean): Promise<void> {
    written.current = text;
    toWrite.current = text;
    setWriting(true);
    if (busy.current) return;
    writes.current++;
    await put();
    if (again) await read();
    writes.current--;
    if (writes.current === 0) setWriting(false);
  }

  /** Sends what was written last; a reading under way goes on with it. */
  function put(): Promise<void> {
    putting.current ??= putAll().finally(() => {
      putting.current = null;
    });
    return putting.current;
  }

  async function putAll(): Promise<void> {
    const { signal } = new AbortController();
    while (toWrite.current !== null && id.current !== null) {
      const file = new Blob([toWrite.current], { type: 'application/json' });
      toWrite.current = null;
      try {
        await sendFile(id.current, 'house.json', file, { tell: () => {}, signal });
      } catch (thrown) {
        setProblems(problemsOf(thrown));
        lose(problemsOf(thrown));
      }
    }
  }

  /** @returns what was refused */
  async function sendAll(given: readonly PathOf<File>[]): Promise<readonly Message[]> {
    sendingStop.current = new AbortController();
    const { signal } = sendingStop.current;
    const refused: Message[] = [];
    const all = given.reduce((sum, { file }) => sum + file.size, 0) || 1;
    let before = 0;
    try {
      id.current ??= (await startBringing(onto)).id;
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
    toWrite.current = written.current;
    setPreview(null);
    mark('not come', () => true);
  }

  async function read(): Promise<void> {
    const own = id.current;
    if (own === null) return;
    readingStop.current.abort();
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
      if (!signal.aborted) {
        setProblems((before) => [...before, ...problemsOf(thrown)]);
        lose(problemsOf(thrown));
      }
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
    written.current = null;
    toWrite.current = null;
    setBroughtHouse(null);
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
  return {
    files,
    sending,
    reading,
    preview,
    keeping,
    problems,
    broughtHouse,
    writing,
    send,
    write,
    sendRest,
    stop,
    drop,
    keep,
    complain,
  };
}
