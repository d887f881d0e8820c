import { Worker } from 'node:worker_threads';
import { afterEach, describe, expect, test } from 'vitest';
import { calculateInThread } from '../../server/jobs/calculateInThread.ts';
import { Stopped, type TaskOf } from '../../server/jobs/tasks.ts';
import { writerInThread } from '../../server/jobs/writer.ts';
import { Refused } from '../../server/refused.ts';
import type { AssessStep } from '../../src/assess.ts';

describe('a writer in a thread', () => {
  const told: string[] = [];
  const { writer, close } = writerInThread(
    () => new Worker(new URL('./brittleWriter.mjs', import.meta.url)),
    (text) => told.push(text),
  );
  afterEach(close);
  const store = () => writer.storeOutcome('x', 'y', { kind: 'cancelled' });

  test('hands a failure over with its code', async () => {
    await expect(writer.deleteHouse('x')).rejects.toMatchObject({ message: 'full', code: 'SQLITE_FULL' });
  });

  test('that breaks down refuses what was waiting, is told, and is started again', async () => {
    const waiting = [writer.putAway('x', true), store()];
    for (const call of await Promise.allSettled(waiting))
      expect(call.status === 'rejected' && call.reason).toBeInstanceOf(Refused);
    expect(told.join()).toMatch(/broke down.*broken/);
    await expect(store()).resolves.toBeUndefined();
  });
});

describe('a calculation in a thread', () => {
  const task: TaskOf<'assess'> = { kind: 'assess', database: 'x', id: 'y' };
  const inThread = (code: string) =>
    new Worker(`const { parentPort } = require('node:worker_threads'); ${code}`, { eval: true });
  const running = (code: string, onStep?: (step: AssessStep) => void) =>
    calculateInThread(() => inThread(code))(task, onStep);

  test('tells its steps and gives its result', async () => {
    const told: AssessStep[] = [];
    const code =
      "parentPort.postMessage({ step: { kind: 'nights' } }); parentPort.postMessage({ result: { kind: 'cancelled' } });";
    expect(await running(code, (step) => told.push(step)).result).toEqual({ kind: 'cancelled' });
    expect(told).toEqual([{ kind: 'nights' }]);
  });

  test('leaves its thread to the next, unless it was stopped', async () => {
    let started = 0;
    const counting = `let tasks = 0;
      parentPort.on('message', ({ id }) => {
        if (id === 'endless') for (;;);
        parentPort.postMessage({ result: ++tasks });
      });`;
    const calculate = calculateInThread(() => {
      started++;
      return inThread(counting);
    });
    const first = calculate(task);
    expect(await first.result).toBe(1);
    const second = calculate(task);
    first.stop();
    expect(await second.result).toBe(2);
    // Its result is on the way already when it is stopped: the thread that ends is not left to the next.
    const late = calculate(task);
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    late.stop();
    await expect(late.result).rejects.toBeInstanceOf(Stopped);
    expect(await calculate(task).result).toBe(1);
    const endless = calculate({ ...task, id: 'endless' });
    endless.stop();
    await expect(endless.result).rejects.toBeInstanceOf(Stopped);
    expect(await calculate(task).result).toBe(1);
    expect(started).toBe(3);
  });

  test('can be stopped in the middle of its work', async () => {
    const { result, stop } = running('for (;;);');
    stop();
    await expect(result).rejects.toBeInstanceOf(Stopped);
  });

  test('that breaks down, or ends without a result, rejects', async () => {
    await expect(running("throw new Error('broken');").result).rejects.toThrow('broken');
    await expect(running('process.exit(3);').result).rejects.toThrow('code 3');
  });

  test('that finds the disk full says so with the code', async () => {
    const code = "throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });";
    await expect(running(code).result).rejects.toMatchObject({ code: 'ENOSPC' });
  });
});
