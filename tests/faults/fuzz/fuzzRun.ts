/** `npm run faults -- --fuzz --seconds N --seed S`: the routes for half of the time, the parsers for the other. */
import { Worker } from 'node:worker_threads';
import fc from 'fast-check';
import { parsers } from './parsers.ts';
import { requestsProperty, routesAtHand } from './routes.ts';

/** A case that takes longer hangs [s]. */
const LONGEST = 60;

/** Resolves with the number of properties that do not hold. */
export async function fuzzRun(seconds: number, seed: number, tell: (text: string) => void): Promise<number> {
  const watchdog = watched(seed);
  let faults = 0;
  const run = async (name: string, property: fc.IRawProperty<unknown>, share: number) => {
    let [longest, cases] = [0, 0];
    const before = process.memoryUsage.rss();
    let largest = before;
    const measured: fc.IRawProperty<unknown> = Object.create(property, {
      run: {
        value: async (value: unknown) => {
          const begun = performance.now();
          const result = await property.run(value);
          longest = Math.max(longest, performance.now() - begun);
          largest = Math.max(largest, process.memoryUsage.rss());
          cases++;
          watchdog.alive();
          return result;
        },
      },
      isAsync: { value: () => true },
    });
    const details = await fc.check(measured as fc.IAsyncProperty<unknown>, {
      numRuns: Number.MAX_SAFE_INTEGER,
      interruptAfterTimeLimit: seconds * share * 1000,
      markInterruptAsFailure: false,
      endOnFailure: true, // what a server answers hangs on what it was asked before: there is nothing to shrink
      seed,
    });
    const failed = details.failed && !details.interrupted;
    if (failed) faults++;
    tell(
      `${name}: ${cases} cases, longest ${longest.toFixed(0)} ms, memory ${mb(before)} to at most ${mb(largest)} MB` +
        (failed ? `; FAULT\n${fc.defaultReportMessage(details)}` : ''),
    );
  };
  const at = await routesAtHand(true);
  try {
    await run('routes', requestsProperty(at), 0.5);
    at.assertNothingOutside();
    for (const [route, counts] of [...at.answered].sort())
      tell(
        `  ${route}: ${[...counts]
          .sort(([a], [b]) => a - b)
          .map(([status, n]) => `${status} x ${n}`)
          .join(', ')}`,
      );
    const never = at.routes.filter((route) => !at.answered.has(route) && !route.endsWith('*'));
    tell(
      `  ${at.routes.length} routes, never asked: ${never.join(', ') || 'none'}; nothing was written outside`,
    );
  } finally {
    await at.end();
  }
  for (const { name, property } of parsers) await run(name, property(), 0.5 / parsers.length);
  watchdog.stop();
  return faults;
}

const mb = (bytes: number) => Math.round(bytes / 1024 / 1024);

/** Ends the process when nothing is heard of it for too long: a loop without end lets no timer of its own thread ring. */
function watched(seed: number) {
  const count = new Int32Array(new SharedArrayBuffer(4));
  const code = `
    const { workerData: { count, longest, seed } } = require('node:worker_threads');
    for (;;) {
      const before = Atomics.load(count, 0);
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, longest * 1000);
      if (Atomics.load(count, 0) !== before) continue;
      require('node:fs').writeSync(2, 'HANG after ' + before + ' cases with seed ' + seed + '\\n');
      process.kill(process.pid, 'SIGKILL');
    }`;
  const worker = new Worker(code, { eval: true, workerData: { count, longest: LONGEST, seed } });
  return { alive: () => Atomics.add(count, 0, 1), stop: () => void worker.terminate() };
}
