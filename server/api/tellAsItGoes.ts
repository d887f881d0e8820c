/** Server-sent events: the state of something, told at once and on every change, until there is none any more. */
import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';

interface Told {
  /** The state as it is now; null when there is nothing more to tell. */
  now(): object | null;
  /** Calls back on every change, until the returned function is called. */
  watch(changed: () => void): () => void;
  /** Aborted when the server stops. */
  readonly closing: AbortSignal;
}

export const tellAsItGoes = (c: Context, { now, watch, closing }: Told) =>
  streamSSE(c, async (stream) => {
    let told = '';
    let wake = () => {};
    const wakeUp = () => wake();
    const stopWatching = watch(wakeUp);
    stream.onAbort(wakeUp);
    closing.addEventListener('abort', wakeUp);
    for (;;) {
      const changed = new Promise<void>((resolve) => {
        wake = resolve;
      });
      const state = now();
      if (state === null || stream.aborted || stream.closed || closing.aborted) break;
      const data = JSON.stringify(state);
      if (data !== told) await stream.writeSSE({ data });
      told = data;
      await changed;
    }
    stopWatching();
    closing.removeEventListener('abort', wakeUp);
  });
