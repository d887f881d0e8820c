import { defineConfig } from 'vitest/config';

const inBrowser = 'tests/browser/**/*.test.ts';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: { name: 'plain', include: ['tests/**/*.test.ts'], exclude: [inBrowser] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [inBrowser],
          globalSetup: 'tests/browser/assessOnce.ts',
          testTimeout: 180_000,
        },
      },
    ],
  },
});
