/** Processes killed in the middle of what they do; 200 points by `npm run faults`. */
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type Bundled, bundled } from './bundled.ts';
import { type Found, forget, killAt, pointsOf, type Rehearsed, rehearsals } from './kills/kills.ts';

vi.setConfig({ testTimeout: 180_000, hookTimeout: 180_000 });

let built: Bundled;
let all: readonly Rehearsed[] = [];
beforeAll(async () => {
  built = await bundled();
  all = await rehearsals(built.child, 1);
});
afterAll(() => {
  forget(all);
  built.remove();
});

test('killed at 21 seeded points of imports, a posting, an undo, a migration, a backup and a restore, the database is sound, has each wholly or not at all, and does it when asked again', async () => {
  const found: Found[] = [];
  for (const point of pointsOf(all, 21, 11)) found.push(await killAt(point, all, built.child));
  expect(found).toHaveLength(21);
  // Else nothing was disturbed at all.
  expect(found.filter(({ killed }) => killed === 'inside').length).toBeGreaterThan(5);
});
