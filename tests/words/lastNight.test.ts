import { describe, expect, test } from 'vitest';
import type { NightResult } from '../../src/assessment.ts';
import {
  againstDrawnSentence,
  foretoldSentence,
  lastReadingSentence,
  nightSentence,
} from '../../src/words/answer.ts';

const night: NightResult = {
  date: '2027-02-12',
  from: '2027-02-12T21:00:00+00:00',
  to: '2027-02-13T06:00:00+00:00',
  used: true,
  heated: false,
  reasons: [],
  dropK: 1.9,
  rateKPerH: 0.21,
  meanDifferenceK: 13.7,
  timeConstantH: 70,
  timeConstantSeH: 8,
  foretoldDropK: { value: 1.4, low: 1.18, high: 1.62 },
};
const breakfast = Date.parse('2027-02-13T07:30:00+00:00');
const hours = (n: number) => breakfast + n * 3_600_000;

describe('the night that has just gone', () => {
  test('is last night until the next evening is over, then a night with a date', () => {
    expect(nightSentence(night, 4, breakfast)).toBe(
      'Last night it lost 1.9 K in 9 hours while it was 4.0 °C outside.',
    );
    expect(nightSentence(night, 4, hours(30))).toMatch(/^In the night of 12 February it lost/);
  });

  test('is no last night on a clock that is behind the readings', () => {
    expect(nightSentence(night, 4, hours(-48))).toMatch(/^In the night of 12 February/);
  });

  test('is set beside what the drawing would have done', () => {
    expect(foretoldSentence(night)).toBe('Built as drawn it would have lost 1.2 to 1.6 K.');
    expect(againstDrawnSentence(night)).toBe('In this night it lost more than the drawing accounts for.');
  });
});

test.each([
  [-0.3, 1.4, 'at most 1.4 K'],
  [-0.3, 0.02, 'hardly anything'],
  [0.2, 0.9, '0.2 to 0.9 K'],
])('a foretold fall from %f to %f K is told as %s', (low, high, words) => {
  const foretoldDropK = { value: (low + high) / 2, low, high };
  expect(foretoldSentence({ ...night, foretoldDropK })).toContain(words);
});

test('a fall within the foretold range claims nothing, one below it is said to be less', () => {
  expect(againstDrawnSentence({ ...night, dropK: 1.5 })).toMatch(
    /this night alone does not tell the two apart/,
  );
  expect(againstDrawnSentence({ ...night, dropK: 1.0 })).toMatch(/lost less than drawn/);
});

test('without a design nothing is foretold', () => {
  const { foretoldDropK: _, ...without } = night;
  expect(foretoldSentence(without)).toBeNull();
  expect(againstDrawnSentence(without)).toBeNull();
});

test.each([
  [0.2, 'within the hour.'],
  [5, '5 hours ago.'],
  [26, '1 day ago.'],
  [75, '3 days ago.'],
  [24 * 20, '2 weeks ago.'],
  [24 * 90, '13 February 2027, 07:30.'],
  [-5, '13 February 2027, 07:30.'],
])('%d hours after the last reading it is told as %s', (later, words) => {
  expect(lastReadingSentence('2027-02-13T07:30:00+00:00', hours(later))).toBe(`Last reading ${words}`);
});
