/** Children and servers run as they do in the product: bundled, so that none waits for a loader. */
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { buildServer } from '../../server/build.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Bundled {
  /** Path of the child that is killed (kills/child.ts). */
  readonly child: string;
  /** Path of the command. */
  readonly cli: string;
  remove(): void;
}

export async function bundled(): Promise<Bundled> {
  const folder = mkdtempSync(join(tmpdir(), 'stillwarm-bundle-'));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
  symlinkSync(join(root, 'sample-logs'), join(folder, 'sample-logs'), 'junction');
  const child = join(folder, 'child.mjs');
  await build({
    entryPoints: [join(root, 'tests/faults/kills/child.ts')],
    outfile: child,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  });
  await buildServer(join(folder, 'dist'));
  return { child, cli: join(folder, 'dist/cli.mjs'), remove: () => rmSync(folder, { recursive: true }) };
}
