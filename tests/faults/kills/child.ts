/**
 * A process that does one operation and is killed in it: `child.mjs OPERATION FOLDER MARK DELAY`. A thread of its own
 * ends it with SIGKILL so many milliseconds after the mark, whatever it does then; with a delay below 0 nothing does.
 * It says when it passed each mark.
 */
import { writeSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { operations } from './operations.ts';

const [name, folder, mark, delay] = process.argv.slice(2);
const armed = new Int32Array(new SharedArrayBuffer(4));
const kill = `
  const { workerData: { armed, delay }, parentPort } = require('node:worker_threads');
  parentPort.postMessage('ready');
  Atomics.wait(armed, 0, 0);
  const end = performance.now() + delay;
  while (performance.now() < end) Atomics.wait(armed, 0, 1, Math.min(0.2, end - performance.now()));
  process.kill(process.pid, 'SIGKILL');`;

const operation = operations.find((it) => it.name === name);
if (operation === undefined) throw new Error(`no operation ${name}`);
if (Number(delay) >= 0) {
  const killer = new Worker(kill, { eval: true, workerData: { armed, delay: Number(delay) } });
  await new Promise((resolve) => killer.once('message', resolve));
}

const started = performance.now();
function pass(passed: string): void {
  writeSync(1, `${passed} ${performance.now() - started}\n`);
  if (passed !== mark && passed !== 'ended') return;
  Atomics.store(armed, 0, 1);
  Atomics.notify(armed, 0);
}
pass('begun');
await operation.act(folder, () => pass('storing'));
pass('ended');
