/** The bundle, built into a folder of the test's: what each command brings along. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildServer } from '../../server/build.ts';

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillwarm-build-'));
  writeFileSync(join(folder, 'chunk-OF-AN-EARLIER-BUILD.mjs'), '');
  writeFileSync(join(folder, 'notes.txt'), 'not ours to remove');
  await buildServer(folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The packages that a bundled file loads before its first line runs, with those of the chunks it loads. */
function loadedBy(name: string, seen = new Set<string>()): Set<string> {
  if (seen.has(name)) return seen;
  seen.add(name);
  if (name.startsWith('./'))
    for (const [, target] of readFileSync(join(folder, name), 'utf8').matchAll(
      /^(?:import|export)\b[^;'"]*?["']([^"']+)["']/gm,
    ))
      loadedBy(target, seen);
  return seen;
}

test('assessing a folder loads no database driver and no web server', () => {
  const loaded = loadedBy('./cli.mjs');
  expect([...loaded].filter((name) => /sqlite|hono/.test(name))).toEqual([]);
  expect(loaded).toContain('zod');
});

test('the threads that need the driver do load it', () => {
  expect(loadedBy('./writerWorker.mjs')).toContain('better-sqlite3');
  expect(loadedBy('./calculationWorker.mjs')).toContain('better-sqlite3');
});

test('chunks of an earlier build are removed, and nothing else', () => {
  expect(existsSync(join(folder, 'chunk-OF-AN-EARLIER-BUILD.mjs'))).toBe(false);
  expect(existsSync(join(folder, 'notes.txt'))).toBe(true);
});

test('the workers lie where the server looks for them', () => {
  expect(readdirSync(folder)).toEqual(
    expect.arrayContaining(['cli.mjs', 'writerWorker.mjs', 'calculationWorker.mjs']),
  );
});
