import { expect, test } from 'vitest';
import { dateWords } from '../../../web/parts/dateWords.ts';

test.each([
  ['2026-11-03', 'Tue 3 Nov 2026'],
  ['2026-03-11T07:05', 'Wed 11 Mar 2026, 07:05 by the house’s clock'],
  ['', 'No date yet.'],
])('“%s” is told as “%s”', (local, words) => {
  expect(dateWords(local)).toBe(words);
});
