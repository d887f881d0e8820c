import { describe, expect, test } from 'vitest';
import type { Assessment, NightResult, StageResult } from '../../src/assessment.ts';
import {
  type Answer,
  answerSentence,
  changeSentence,
  coolingSentence,
  lastNight,
  nightSentence,
  nightsSentence,
  widthSentence,
} from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';

const answer: Answer = {
  heatLossWK: { value: 129.2, low: 88.36, high: 188.9 },
  drawnWK: 103,
  ratio: { value: 1.25, low: 0.86, high: 1.83 },
  verdict: 'undecided',
  timeConstantH: { value: 107, low: 98.6, high: 116.4 },
};

test('what cannot be told yet is said with both figures', () => {
  expect(answerSentence(answer)).toBe(
    'It loses between 88 and 189 W/K; the drawing says 103 W/K. Whether it performs as drawn cannot be told yet.',
  );
});

test('losing less than drawn for certain is good news', () => {
  const good: Answer = {
    ...answer,
    heatLossWK: { value: 80, low: 70, high: 90 },
    ratio: { value: 0.78, low: 0.68, high: 0.87 },
    verdict: 'meets',
  };
  expect(answerSentence(good)).toMatch(/It loses less than drawn: better than it had to be\.$/);
});

test.each([
  ['meets', 0.92, 1.1, 'It performs as drawn, within the allowance.'],
  ['exceeds', 1.2, 1.6, 'It loses more than drawn.'],
] as const)('a house that %s is told so', (verdict, low, high, words) => {
  expect(answerSentence({ ...answer, verdict, ratio: { value: (low + high) / 2, low, high } })).toContain(
    words,
  );
});

test('an unfinished house gets its figures and no verdict', () => {
  expect(answerSentence({ ...answer, verdict: null })).toBe(
    'It loses between 88 and 189 W/K; the drawing says 103 W/K. The house was not complete then, so this is no verdict on the finished design.',
  );
});

test('without a design there is nothing to set the loss beside', () => {
  expect(answerSentence({ ...answer, drawnWK: null, ratio: null, verdict: null })).toBe(
    'It loses between 88 and 189 W/K. There is no design to set it beside.',
  );
});

test('without watts the cooling is told, without cooling nothing is claimed', () => {
  expect(answerSentence({ ...answer, heatLossWK: null })).toBe(
    'After 99 to 116 hours without heat, about a third of its warmth over outdoors is left. How many watts that is cannot be told yet.',
  );
  expect(answerSentence({ ...answer, heatLossWK: null, timeConstantH: null })).toBe(
    'How well it holds its warmth cannot be told from these nights yet.',
  );
});

test('a time constant is told as hours until a third is left', () => {
  expect(coolingSentence({ value: 30, low: 27.2, high: 33.4 })).toMatch(
    /^After 27\.2 to 33\.4 hours without heat/,
  );
});

const night: NightResult = {
  date: '2027-02-12',
  from: '2027-02-12T21:10:00+00:00',
  to: '2027-02-13T05:40:00+00:00',
  used: true,
  heated: false,
  reasons: [],
  dropK: 1.17,
  rateKPerH: 0.14,
  meanDifferenceK: 13.7,
  timeConstantH: 115,
  timeConstantSeH: 12,
};

test('a night is told by its fall, its hours and the temperature outside', () => {
  expect(nightSentence(night, 4.12)).toBe(
    'In the night of 12 February it lost 1.2 K in 8 hours 30 minutes while it was 4.1 °C outside.',
  );
});

test('without readings outside the mean difference stands in', () => {
  expect(nightSentence(night, null)).toMatch(/while it was 13\.7 K warmer inside than outside\.$/);
});

test('hours count across a clock change as they passed', () => {
  const spring = {
    ...night,
    date: '2027-03-27',
    from: '2027-03-27T23:00:00+00:00',
    to: '2027-03-28T06:00:00+01:00',
  };
  expect(nightSentence(spring, 4)).toContain('in 6 hours while');
});

test('a night without a window has no sentence', () => {
  expect(nightSentence({ ...night, from: null, to: null, dropK: null }, 4)).toBeNull();
});

test('a temperature that rose is not called a loss', () => {
  expect(nightSentence({ ...night, dropK: -0.4 }, 4)).toContain('it gained 0.4 K');
});

const withNights = (...nights: NightResult[]): Assessment => ({
  house: 'A house',
  design: null,
  imports: [],
  stages: [
    {
      name: 'Whole record',
      from: null,
      to: null,
      nights,
      timeConstantH: null,
      estimates: [],
      tier: 'none',
      heatLossWK: null,
      gap: null,
      next: [],
      notes: [],
    },
  ],
  comparisons: [],
  warnings: [],
});

test('the last night is the last that counts, not the last recorded', () => {
  const counted = { ...night, date: '2027-02-10' };
  expect(lastNight(withNights(counted, { ...night, used: false }))?.date).toBe('2027-02-10');
  expect(lastNight(withNights({ ...night, used: false }))?.date).toBe('2027-02-12');
  expect(lastNight(withNights({ ...night, used: false, dropK: null }))).toBeNull();
});

const change = { before: 'Before', after: 'After', timeConstantRatio: null, notes: [] };

test.each([
  [0.78, 0.95, 'the heat loss fell by 5 to 22 %.'],
  [1.04, 1.3, 'the heat loss rose by 4 to 30 %.'],
  [0.78, 1.01, 'changed by something between 22 % less and 1 % more'],
])('a ratio of %f to %f is told as a change', (low, high, words) => {
  expect(changeSentence({ ...change, heatLossRatio: { value: (low + high) / 2, low, high } })).toContain(
    words,
  );
});

test('stages that cannot be compared are told so', () => {
  expect(changeSentence({ ...change, heatLossRatio: null })).toBe(
    'From “Before” to “After” nothing can be compared: one side has too few good nights.',
  );
});

test('instants are told by the house’s own clock, whatever the reader’s', () => {
  expect(figures.moment('2027-07-01T00:30:00+02:00')).toBe('1 July 2027, 00:30');
  expect(figures.day('2027-02-12')).toBe('12 February');
});

test('the nights are counted by what became of them, and only what there is', () => {
  const leftOut = { ...night, used: false };
  expect(nightsSentence(4, [night, night, leftOut])).toBe(
    '4 nights, the newest at the right: 2 used, 1 left out, 1 in no stage. A hollow night was not used, for the reason on it.',
  );
  expect(nightsSentence(1, [night])).toBe('1 night: 1 used.');
});

describe('where the width of an interval comes from', () => {
  const stage: StageResult = {
    name: 'Whole record',
    from: '2027-01-10T12:00:00+00:00',
    to: '2027-02-10T12:00:00+00:00',
    nights: [],
    timeConstantH: null,
    estimates: [],
    tier: 'loggers',
    heatLossWK: null,
    gap: null,
    next: [],
    notes: [],
  };
  test('is said from the largest share down, those under 5 % left out', () => {
    const doubts = [
      { source: 'capacity', share: 0.58 },
      { source: 'nights', share: 0.38 },
      { source: 'wind', share: 0.04 },
    ] as const;
    expect(widthSentence({ ...stage, doubts: [...doubts] })).toBe(
      'Where the width of the interval comes from: how much heat the house holds 58 %; nights and days that differ 38 %.',
    );
  });

  test('is said of which stage where there are several', () => {
    const doubts = [{ source: 'sun', share: 1 } as const];
    expect(widthSentence({ ...stage, name: 'After', doubts }, true)).toBe(
      'Where the width of the interval of “After” comes from: sun and sky 100 %.',
    );
  });

  test('is not said where nobody worked it out', () => {
    expect(widthSentence(stage)).toBeNull();
  });
});
