/** What is worked out of all readings of a house while somebody waits: once for all who do, and told as it goes. */
import { watchers } from '../jobs/watchers.ts';
import type { Reading } from '../store/reading.ts';
import type { Work } from './shapes.ts';

type WorkOut<T> = (id: string, tell: (work: Work) => void, signal: AbortSignal) => Promise<T>;

interface AtWork<T> {
  readonly content: string;
  readonly result: Promise<T>;
  readonly stop: AbortController;
  waiting: number;
}

/**
 * The result is kept of the house that was asked for last alone, for as long as that stays as it is: what is kept stays
 * bounded. When the last of those who wait has left, the work ends.
 */
export function onceWaitedFor<T>(reading: Reading, workOut: WorkOut<T>) {
  let kept: { readonly content: string; readonly result: T } | null = null;
  const atWork = new Map<string, AtWork<T>>();
  const told = new Map<string, Work>();
  const { changed, watch } = watchers();
  const contentOf = (id: string) => reading.house(id)?.content ?? '';

  function tell(id: string, work: Work | null): void {
    if (work === null) told.delete(id);
    else told.set(id, work);
    changed(id);
  }

  function begin(id: string, content: string): AtWork<T> {
    const stop = new AbortController();
    const isCurrent = () => atWork.get(id)?.stop === stop;
    const work = async () => {
      try {
        const result = await workOut(id, (it) => isCurrent() && tell(id, it), stop.signal);
        if (contentOf(id) === content) kept = { content, result };
        return result;
      } finally {
        if (isCurrent()) end(id);
      }
    };
    const own = { content, stop, waiting: 0, result: Promise.resolve().then(work) };
    atWork.set(id, own);
    return own;
  }

  function end(id: string): void {
    atWork.delete(id);
    tell(id, null);
  }

  return {
    /** @param leaving aborted when whoever asks does not wait any more; the result may then never come */
    async of(id: string, leaving: AbortSignal): Promise<T> {
      leaving.throwIfAborted();
      const content = contentOf(id);
      if (kept?.content === content) return kept.result;
      const known = atWork.get(id);
      const own = known?.content === content ? known : begin(id, content);
      own.waiting++;
      const leave = () => {
        if (--own.waiting > 0) return;
        own.stop.abort();
        if (atWork.get(id) === own) end(id);
      };
      leaving.addEventListener('abort', leave);
      try {
        return await own.result;
      } finally {
        leaving.removeEventListener('abort', leave);
      }
    },
    /** Null when nothing is at work that takes long. */
    workOf: (id: string): Work | null => told.get(id) ?? null,
    /** Calls back on every change of that, until the returned function is called. */
    watch,
  };
}
