/** The words and the months of the page of the nights. */
import { describe, expect, test } from 'vitest';
import type { NightResult } from '../../../src/assessment.ts';
import { monthSentence, monthsOf } from '../../../web/nights/months.ts';
import { decisionSentence, handPickedSentence } from '../../../web/nights/nightWords.ts';

const night = (date: string, used = true, codes: readonly string[] = []): NightResult => ({
  date,
  from: null,
  to: null,
  used,
  heated: false,
  reasons: codes.map((code) => ({ code, text: code })),
  dropK: 1,
  rateKPerH: 0.2,
  meanDifferenceK: 10,
  timeConstantH: 40 + Number(date.slice(-2)),
  timeConstantSeH: 3,
});

describe('a year of nights', () => {
  test('is folded by month, and the same month of another year is another', () => {
    const nights = ['2026-12-30', '2026-12-31', '2027-01-01', '2027-12-31'].map((date) => night(date));
    expect(monthsOf(nights).map(({ title, nights }) => [title, nights.length])).toEqual([
      ['December 2026', 2],
      ['January 2027', 1],
      ['December 2027', 1],
    ]);
  });

  test('a folded month says what is in it', () => {
    const [january] = monthsOf([night('2027-01-01'), night('2027-01-20'), night('2027-01-21', false)]);
    expect(monthSentence(january)).toBe('January 2027: 2 of 3 nights used, time constants of 41 to 60 h');
    const [one] = monthsOf([night('2027-02-01', false)]);
    expect(monthSentence(one)).toBe('February 2027: 0 of 1 night used');
  });
});

describe('a decision by hand', () => {
  test('is told with its reason, or that there is none', () => {
    expect(decisionSentence({ date: '2027-01-11', used: false, why: 'a window stood open.' })).toBe(
      'Left out by hand: a window stood open.',
    );
    expect(decisionSentence({ date: '2027-01-11', used: true })).toBe('Put in by hand, without a reason.');
  });

  test('makes the result hand-picked, and says how much of it', () => {
    expect(handPickedSentence([night('2027-01-01')])).toBeNull();
    expect(
      handPickedSentence([
        night('2027-01-01', false, ['uneven-fall', 'left-out-by-hand']),
        night('2027-01-02', true, ['put-in-by-hand']),
        night('2027-01-03', false, ['left-out-by-hand']),
      ]),
    ).toBe('This result is hand-picked: of its nights, 2 left out and 1 put in by hand.');
  });
});
