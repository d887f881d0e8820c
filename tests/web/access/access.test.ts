import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { placeAfter } from '../../../web/access/placeAfter.ts';
import { csvOf } from '../../../web/readings/csv.ts';

describe('after signing in', () => {
  test.each(['/house/x/nights?night=2027-01-10', '/', '/bring'])('one goes where one wanted: %s', (then) => {
    expect(placeAfter(then)).toBe(then);
  });

  test.each([
    '//evil.example',
    '/\\evil.example',
    '\\\\evil.example',
    'https://evil.example',
    'javascript:alert(1)',
    '/\t/evil.example',
    '\n//evil.example',
    ' //evil.example',
    '',
    undefined,
    '/sign-in?then=/',
  ])('one stays here: %j', (then) => {
    expect(placeAfter(then)).toBe('/');
  });
});

describe('a CSV for a spreadsheet', () => {
  test.each([
    '=1+1',
    '+1',
    '-1',
    '@SUM(1)',
    '\t=1',
    '\r=1',
    '\n=1',
    '=1\n2',
    ' =1',
    '\u200b=1',
    '\ufeff=1',
    '\uff1d1',
  ])('has no formula: %j', (text) => {
    const [[cell, figure]] = Papa.parse<string[]>(csvOf([[text, -1.5]]), { newline: '\r\n' }).data;
    expect([cell, figure]).toEqual([`'${text}`, '-1.5']);
  });

  test.each(['Hall', '2027-07-01T01:30:00+01:00', 'a=b', ''])('leaves other words alone: %j', (text) => {
    expect(Papa.parse<string[]>(csvOf([[text, 1]])).data[0][0]).toBe(text);
  });
});
