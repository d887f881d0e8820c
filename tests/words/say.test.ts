import { expect, test } from 'vitest';
import { say } from '../../src/words/index.ts';

test('nights are named by day and month, not as house.json writes them', () => {
  expect(say({ code: 'heated-nights-used', dates: ['2027-02-04'] }).text).toBe(
    'From the heated night of 4 February.',
  );
  expect(say({ code: 'heated-nights-used', dates: ['2027-02-04', '2027-02-06'] }).text).toBe(
    'From the heated nights of 4 February and 6 February.',
  );
  expect(say({ code: 'hand-picked', dates: ['2027-02-04', '2027-02-06'] }).text).toBe(
    'The nights of 4 February and 6 February were judged by hand.',
  );
  expect(say({ code: 'night-crosses-stage', dates: ['2027-01-25'] }).text).toBe(
    'The night of 25 January crosses the bound of a stage and belongs to neither.',
  );
});

test('a date that the record does not have is told with its year, which may be the mistake', () => {
  const where = { file: 'house.json', key: 'nights[0]' };
  expect(say({ code: 'no-such-night', date: '2026-02-04', where }).text).toContain('4 February 2026');
});
