/** A thread for tasks, one at a time. */
import { parentPort } from 'node:worker_threads';
import type { CalculationMessage } from './calculateInThread.ts';
import { runTask, type Task } from './tasks.ts';

const tell = (message: CalculationMessage<unknown>) => parentPort?.postMessage(message);

parentPort?.on('message', (task: Task) => {
  const result = runTask(task, (step) => tell({ step }));
  tell({ result });
});
