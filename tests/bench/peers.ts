/** Peers that only the bench needs: installed outside the repository, once. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** Installs "name@version" unless it is there; why it could not be, or null. */
export function install(wanted: string): string | null {
  const folder = folderOf(wanted);
  const name = wanted.slice(0, wanted.lastIndexOf('@'));
  if (existsSync(join(folder, 'node_modules', name, 'package.json'))) return null;
  mkdirSync(folder, { recursive: true });
  const npm = spawnSync('npm', ['install', '--no-audit', '--no-fund', '--prefix', folder, wanted], {
    cwd: folder,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (npm.status === 0) return null;
  return npm.error?.message ?? (npm.stderr.trim().split('\n')[0] || `npm ended with ${npm.status}`);
}

/** The package that `install` brought. */
export function load<Package>(wanted: string): Package {
  const name = wanted.slice(0, wanted.lastIndexOf('@'));
  return createRequire(join(folderOf(wanted), 'package.json'))(name);
}

/** A folder per version, so that a new one is not taken for the old. */
const folderOf = (wanted: string) =>
  join(
    process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'),
    'stillwarm-bench',
    wanted.replaceAll(/[^\w.-]+/g, '_'),
  );
