import { expect, test } from 'vitest';
import { numberIn, whyNot } from '../../../web/buildup/numberIn.ts';

test.each([
  ['0,035', 0.035],
  ['1200', 1200],
  ['1234,5', 1234.5],
  ['1.200', 1.2],
])('“%s” reads in one way only, as %s', (text, number) => {
  expect(numberIn(text)).toBe(number);
});

test.each([
  ['1,200', '“1,200” can be read as 1.2 or as 1200: write one of them.'],
  ['−12,500', '“−12,500” can be read as -12.5 or as -12500: write one of them.'],
])('“%s” may be thousands or decimals, so it is asked about', (text, why) => {
  expect(numberIn(text)).toBeNull();
  expect(whyNot(text)).toBe(why);
});
