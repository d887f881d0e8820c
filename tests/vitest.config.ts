import { defineConfig } from 'vitest/config';

const inBrowser = 'tests/browser/**/*.test.ts';
/** They start processes and threads, set what the process holds, and fill disks. */
const served = ['tests/server/**/*.test.ts', 'tests/faults/**/*.test.ts'];

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        // Pure functions: what one file has imported serves the next, which halves their time, as long as no other
        // project's files come between.
        test: {
          name: 'plain',
          include: ['tests/**/*.test.ts'],
          exclude: [inBrowser, ...served],
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      { extends: true, test: { name: 'server', include: served, sequence: { groupOrder: 1 } } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [inBrowser],
          globalSetup: 'tests/browser/assessOnce.ts',
          testTimeout: 180_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
