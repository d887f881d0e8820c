/** The package's folder, in both layouts: `server/` and the bundled `dist/` lie one level below it. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import packageFile from '../package.json' with { type: 'json' };
import { sha256 } from './store/sha256.ts';

export const packageRoot = fileURLToPath(new URL('..', import.meta.url));

/** The version, and once bundled the hash of what calculates: results of other code are not taken for current. */
export function softwareVersion(): string {
  const bundled = new URL('./calculationWorker.mjs', import.meta.url);
  return existsSync(bundled)
    ? `${packageFile.version} ${sha256(readFileSync(bundled))}`
    : packageFile.version;
}
