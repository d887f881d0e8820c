/** A house folder on its way in: sent file by file, shown as understood, then kept or dropped. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BringingPreview } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import { dropBringing, keepBringing, problemsOf, sendFile, startBringing } from '../api.ts';
import { houseFolder, type PathOf } from './houseFolder.ts';

export interface Sending {
  readonly path: string;
  /** The how manieth file, from 1. */
  readonly number: number;
  readonly of: number;
  /** Of all of them, from 0 to 1. */
  readonly done: number;
}

export interface Bringing {
  readonly preview: BringingPreview | null;
  readonly sending: Sending | null;
  readonly keeping: boolean;
  readonly problems: readonly Message[];
  readonly send: (found: readonly PathOf<File>[]) => Promise<void>;
  readonly cancel: () => Promise<void>;
  readonly keep: () => Promise<void>;
}

/** @param kept called with the id of the house once it is stored */
export function useBringing(kept: (id: string) => void): Bringing {
  const [preview, setPreview] = useState<BringingPreview | null>(null);
  const [sending, setSending] = useState<Sending | null>(null);
  const [keeping, setKeeping] = useState(false);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const waiting = useRef<string | null>(null);
  const stop = useRef(new AbortController());

  // Whoever leaves the page without keeping the house leaves nothing behind.
  useEffect(
    () => () => {
      stop.current.abort();
      if (waiting.current !== null) dropBringing(waiting.current).catch(() => {});
    },
    [],
  );

  async function send(found: readonly PathOf<File>[]): Promise<void> {
    const files = houseFolder(found);
    if (files.length === 0 || sending !== null || keeping) return;
    setProblems([]);
    stop.current = new AbortController();
    const { signal } = stop.current;
    const all = files.reduce((sum, { file }) => sum + file.size, 0) || 1;
    let before = 0;
    try {
      waiting.current ??= (await startBringing()).id;
      for (const [i, { path, file }] of files.entries()) {
        const tell = (share: number) =>
          setSending({ path, number: i + 1, of: files.length, done: (before + share * file.size) / all });
        tell(0);
        setPreview(await sendFile(waiting.current, path, file, { tell, signal }));
        before += file.size;
      }
    } catch (thrown) {
      if (!signal.aborted) setProblems(problemsOf(thrown));
    }
    setSending(null);
  }

  async function cancel(): Promise<void> {
    stop.current.abort();
    const id = waiting.current;
    waiting.current = null;
    setPreview(null);
    setProblems([]);
    if (id !== null) await dropBringing(id).catch((thrown) => setProblems(problemsOf(thrown)));
  }

  async function keep(): Promise<void> {
    const id = waiting.current;
    if (id === null) return;
    setKeeping(true);
    try {
      const stored = await keepBringing(id);
      waiting.current = null;
      kept(stored.id);
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setKeeping(false);
  }

  return { preview, sending, keeping, problems, send, cancel, keep };
}
