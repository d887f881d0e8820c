/** A thread for one task. */
import { parentPort, workerData } from 'node:worker_threads';
import { runTask } from './tasks.ts';

const result = runTask(workerData, (step) => parentPort?.postMessage({ step }));
parentPort?.postMessage({ result });
