import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { published } from './schemas.ts';

test.each(Object.entries(published))('%s as published is what the code accepts and prints', (file, text) => {
  expect(readFileSync(new URL(`../../src/${file}`, import.meta.url), 'utf8')).toBe(text);
});
