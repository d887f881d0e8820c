/** Runs tasks in threads: a thread has one task at a time, so that stopping a task is ending its thread. */
import type { Worker } from 'node:worker_threads';
import type { AssessStep } from '../../src/assess.ts';
import { type Calculate, Stopped, type Task, type TaskOf, type TaskResults } from './tasks.ts';

/** What a thread answers: the steps as it goes, then the result. */
export type CalculationMessage<Result> = { readonly step: AssessStep } | { readonly result: Result };

/** A thread that has nothing to do ends after this, and the memory of its last task with it [ms]. */
const KEPT_READY = 60_000;

/** @param start starts a worker that runs the tasks it is sent, one after the other */
export function calculateInThread(start: () => Worker): Calculate {
  const threads = threadsAtHand(start);
  return <K extends Task['kind']>(task: TaskOf<K>, onStep: (step: AssessStep) => void = () => {}) => {
    const worker = threads.take();
    let stopped = false;
    let done = false;
    const result = new Promise<TaskResults[K]>((resolve, reject) => {
      const answered = (message: CalculationMessage<TaskResults[K]>) => {
        if ('step' in message) onStep(message.step);
        // A thread that was told to end is not for the next task, even where its result came before its end.
        else if (!stopped) {
          done = true;
          worker.off('message', answered).off('error', reject).off('exit', ended);
          threads.give(worker);
          resolve(message.result);
        }
      };
      const ended = (code: number) =>
        reject(stopped ? new Stopped() : new Error(`the worker ended with code ${code} before its result`));
      worker.on('message', answered).on('error', reject).on('exit', ended);
      worker.postMessage(task);
    });
    return {
      result,
      stop: () => {
        // By then the thread may be at the task of somebody else.
        if (done) return;
        stopped = true;
        void worker.terminate();
      },
    };
  };
}

/** One thread is kept for the next task: starting it takes longer than a small task. */
function threadsAtHand(start: () => Worker) {
  let ready: { readonly worker: Worker; readonly end: () => void; readonly ending: NodeJS.Timeout } | null =
    null;
  return {
    take(): Worker {
      if (ready === null) return start();
      const { worker, end, ending } = ready;
      ready = null;
      clearTimeout(ending);
      worker.off('error', end).off('exit', end).ref();
      return worker;
    },
    give(worker: Worker): void {
      const end = () => {
        if (ready?.worker === worker) ready = null;
        void worker.terminate();
      };
      if (ready !== null) {
        end();
        return;
      }
      worker.on('error', end).on('exit', end).unref();
      ready = { worker, end, ending: setTimeout(end, KEPT_READY).unref() };
    },
  };
}
