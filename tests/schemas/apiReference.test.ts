import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { apiReference, apiRoutes } from './apiReference.ts';
import { apiWords } from './apiWords.ts';

test('every route has words in the reference, and every words a route', () => {
  expect(Object.keys(apiWords).toSorted()).toEqual(
    apiRoutes()
      .map(({ route }) => route)
      .toSorted(),
  );
});

test('API.md as published is what the routes check with', () => {
  expect(readFileSync(new URL('../../server/api/API.md', import.meta.url), 'utf8')).toBe(apiReference());
});
