/** One run of one contestant: the time of its task, the peak memory of the process, what was made. */
import { pathToFileURL } from 'node:url';
import type { Bench } from './bench.ts';
import type { Run } from './table.ts';

const [file, kase, name, input] = process.argv.slice(2);
const { default: bench }: { default: Bench } = await import(pathToFileURL(file).href);
const contestant = bench.contestants.find((it) => it.name === name);
if (contestant === undefined) throw new Error(`no contestant ${name}`);

const task = await contestant.ready(kase);
const cpuBefore = process.cpuUsage();
const before = performance.now();
const made = await task(input);
const seconds = (performance.now() - before) / 1000;
const { user, system } = process.cpuUsage(cpuBefore);
const run: Run = {
  seconds,
  processorSeconds: (user + system) / 1e6,
  // in KiB on every platform
  peakMB: process.resourceUsage().maxRSS / 1024,
  account: bench.account(made),
  waits: bench.waits?.(made) ?? null,
};
process.stdout.write(JSON.stringify(run), () => process.exit());
