/** Runs each task in a thread of its own, so that stopping one is ending its thread. */
import type { Worker } from 'node:worker_threads';
import type { AssessStep } from '../../src/assess.ts';
import { type Calculation, Stopped, type Task, type TaskOf, type TaskResults } from './tasks.ts';

type Message<Result> = { readonly step: AssessStep } | { readonly result: Result };

/** @param start starts a worker that runs the task it is given as `workerData` */
export const calculateInThread =
  (start: (task: Task) => Worker) =>
  <K extends Task['kind']>(
    task: TaskOf<K>,
    onStep: (step: AssessStep) => void = () => {},
  ): Calculation<TaskResults[K]> => {
    const worker = start(task);
    let stopped = false;
    const result = new Promise<TaskResults[K]>((resolve, reject) => {
      worker.on('message', (message: Message<TaskResults[K]>) => {
        if ('step' in message) onStep(message.step);
        else resolve(message.result);
      });
      worker.on('error', reject);
      worker.on('exit', (code) => {
        reject(stopped ? new Stopped() : new Error(`the worker ended with code ${code} before its result`));
      });
    });
    return {
      result,
      stop: () => {
        stopped = true;
        void worker.terminate();
      },
    };
  };
