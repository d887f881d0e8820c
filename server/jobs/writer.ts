/** The one writer: every change of the database goes through it, one after the other. */
import type { Worker } from 'node:worker_threads';
import { machineFailure, refused } from '../refused.ts';
import type { Writing } from '../store/writing.ts';

export type Writer = {
  readonly [Call in keyof Writing]: (...args: Parameters<Writing[Call]>) => Promise<void>;
};

export interface WriteRequest {
  readonly number: number;
  readonly call: keyof Writing;
  readonly args: readonly unknown[];
}

/** `failed` is null when the change was made. */
export interface WriteReply {
  readonly number: number;
  readonly failed: { readonly message: string; readonly code: string } | null;
}

interface Pending {
  resolve(): void;
  reject(error: Error): void;
}

/**
 * A writer in a worker thread. When the thread breaks down, the changes that were waiting are refused (each was
 * made wholly or not at all), it is told, and the next change starts a new thread.
 */
export function writerInThread(start: () => Worker, tell: (text: string) => void) {
  const pending = new Map<number, Pending>();
  let worker: Worker | null = null;
  let count = 0;

  function running(): Worker {
    if (worker !== null) return worker;
    const started = start();
    worker = started;
    started.on('message', ({ number, failed }: WriteReply) => {
      const waiting = pending.get(number);
      pending.delete(number);
      if (failed === null) waiting?.resolve();
      else waiting?.reject(Object.assign(new Error(failed.message), { code: failed.code }));
    });
    let why: Error = brokeDown();
    started.on('error', (error) => {
      tell(`The writer broke down and is started again: ${error.message}`);
      why = machineFailure(error) ?? why; // the database was not to be had, say
    });
    started.on('exit', () => {
      worker = null;
      for (const { reject } of pending.values()) reject(why);
      pending.clear();
    });
    return started;
  }

  const ask = (call: keyof Writing, args: readonly unknown[]) =>
    new Promise<void>((resolve, reject) => {
      const number = ++count;
      pending.set(number, { resolve, reject });
      running().postMessage({ number, call, args } satisfies WriteRequest);
    });

  const writer: Writer = {
    keepHouse: (...args) => ask('keepHouse', args),
    addVersion: (...args) => ask('addVersion', args),
    undoVersion: (...args) => ask('undoVersion', args),
    addLink: (...args) => ask('addLink', args),
    removeLink: (...args) => ask('removeLink', args),
    keepUntil: (...args) => ask('keepUntil', args),
    putAway: (...args) => ask('putAway', args),
    deleteHouse: (...args) => ask('deleteHouse', args),
    storeOutcome: (...args) => ask('storeOutcome', args),
    takeUpResult: (...args) => ask('takeUpResult', args),
    noteWatched: (...args) => ask('noteWatched', args),
    forgetWatched: (...args) => ask('forgetWatched', args),
  };
  /** Lets what is waiting finish, and ends the thread. */
  const close = async () => {
    const ending = worker;
    if (ending === null) return;
    const ended = new Promise((resolve) => ending.once('exit', resolve));
    ending.postMessage('close');
    await ended;
  };
  return { writer, close };
}

const brokeDown = () =>
  refused(
    503,
    'writer-broke-down',
    'The part that stores things broke down and is started again.',
    'Look whether the change was made; if not, try again.',
  );
