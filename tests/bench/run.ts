/**
 * `npm run bench [-- NAME …]`: every bench of this folder (or the named ones), each contestant in a process of its
 * own, in turns, on the same files. Medians; ratios travel from machine to machine, absolute figures do not.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import type { Bench, Contestant } from './bench.ts';
import { install } from './peers.ts';
import { type Run, table } from './table.ts';

const ROUNDS = Number(process.env.ROUNDS ?? 5);

const here = new URL('.', import.meta.url).pathname;
const all = readdirSync(here).flatMap((file) => /^(.+)\.bench\.ts$/.exec(file)?.[1] ?? []);
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  console.error(`There is no bench called ${unknown.join(', ')}; there are: ${all.join(', ')}.`);
  process.exit(2);
}

const folder = mkdtempSync(join(tmpdir(), 'stillwarm-bench-'));
try {
  await bundle();
  for (const name of all.filter((it) => wanted.length === 0 || wanted.includes(it))) await runBench(name);
} finally {
  rmSync(folder, { recursive: true });
}

/** Bundled as the product is, so that no loader slows or swells a run. */
async function bundle(): Promise<void> {
  symlinkSync(join(here, '../../node_modules'), join(folder, 'node_modules'), 'junction');
  await build({
    entryPoints: Object.fromEntries([
      ['child', join(here, 'child.ts')],
      ...all.map((name) => [`${name}.bench`, join(here, `${name}.bench.ts`)]),
      ...['writerWorker', 'calculationWorker'].map((name) => [
        name,
        join(here, `../../server/jobs/${name}.ts`),
      ]),
    ]),
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  });
}

async function runBench(name: string): Promise<void> {
  const file = join(folder, `${name}.bench.mjs`);
  const { default: bench }: { default: Bench } = await import(pathToFileURL(file).href);
  console.log(`\n# ${bench.title}\nMedians of ${ROUNDS} runs, each in a process of its own.`);
  const present = bench.contestants.filter(isThere);
  for (const { name: kase, prepare } of bench.cases) {
    const { input, units } = prepare(folder);
    for (const it of present) await it.prepare?.(input);
    const runs = new Map<string, Run[]>(present.map((it) => [it.name, []]));
    for (let round = 0; round < ROUNDS; round++)
      for (const it of present) runs.get(it.name)?.push(runOnce(file, kase, it.name, input));
    console.log(
      `\n## ${kase}: ${units.toLocaleString('en')} ${bench.unit}\n${table(bench.unit, units, runs)}`,
    );
  }
}

function isThere({ name, installs }: Contestant): boolean {
  const failed = installs === undefined ? null : install(installs);
  if (failed !== null) console.log(`${name} is left out, for it could not be installed: ${failed}`);
  return failed === null;
}

function runOnce(bench: string, kase: string, contestant: string, input: string): Run {
  const child = spawnSync(process.execPath, [join(folder, 'child.mjs'), bench, kase, contestant, input], {
    encoding: 'utf8',
    maxBuffer: 1 << 20,
  });
  if (child.status !== 0) throw new Error(`${contestant} failed on ${kase}:\n${child.stderr}`);
  return JSON.parse(child.stdout);
}
