/** Starts a worker thread in either layout: bundled beside this file as .mjs, or in TypeScript under tsx. */
import { Worker } from 'node:worker_threads';

export function startWorker(name: 'writerWorker' | 'calculationWorker', workerData?: unknown): Worker {
  if (!import.meta.url.endsWith('.ts'))
    return new Worker(new URL(`./${name}.mjs`, import.meta.url), { workerData });
  // tsx does not reach into worker threads by itself (Node 20): the thread registers it first.
  const entry = new URL(`./${name}.ts`, import.meta.url).href;
  const registered = `import(${JSON.stringify(import.meta.resolve('tsx/esm/api'))})`;
  const code = `${registered}.then(({ register }) => { register(); return import(${JSON.stringify(entry)}); })`;
  return new Worker(code, { eval: true, workerData });
}
