/** `npm run build:server`: the command and the two workers, bundled into `dist/` with what they share in chunks. */
import { chmodSync, readdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Splitting keeps what only `serve` needs, the database driver above all, out of `assess`. */
export async function buildServer(into: string): Promise<void> {
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: ['server/cli.ts', 'server/jobs/writerWorker.ts', 'server/jobs/calculationWorker.ts'],
    outdir: into,
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    entryNames: '[name]',
    chunkNames: '[name]-[hash]',
    outExtension: { '.js': '.mjs' },
    banner: { js: '#!/usr/bin/env node' },
    logLevel: 'warning',
    metafile: true,
  });
  const built = new Set(Object.keys(metafile.outputs).map((path) => basename(path)));
  // Afterwards, and only what is stale: a dashboard that runs from this folder never misses a file meanwhile.
  for (const name of readdirSync(into))
    if (name.endsWith('.mjs') && !built.has(name)) rmSync(join(into, name));
  chmodSync(join(into, 'cli.mjs'), 0o755);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildServer(join(root, 'dist'));
