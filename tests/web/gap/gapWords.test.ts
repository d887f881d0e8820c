import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubtSources, furtherTests, methods } from '../../../src/assessment.ts';
import { methodsInBrief, testsInBrief } from '../../../src/words/inBrief.ts';
import { piecesOf } from '../../../web/gap/doubtPieces.ts';
import { chanceAlone, figureOfPlace, narrowest, narrowestSentence } from '../../../web/gap/gapWords.ts';

const of = (low: number, value: number, high: number) => ({ value, low, high });

describe('the test that would narrow it most', () => {
  const testOf = (text: string, low: number, high: number, chanceToDecide: number) => ({
    test: 'more-nights' as const,
    moreNights: 10,
    powerW: null,
    durationH: null,
    warmestC: null,
    ratio: of(low, 1.1, high),
    chanceToDecide,
    text,
  });

  test('is the one that leaves the narrowest interval, wherever it stands in the list', () => {
    const tests = [testOf('likeliest', 0.9, 1.3, 0.6), testOf('narrowest', 1.05, 1.15, 0.5)];
    expect(narrowest(tests)?.text).toBe('narrowest');
    expect(narrowest([])).toBeNull();
  });

  test('is told with what it takes off the width and its chance', () => {
    // COMPUTED: a width of 0.2 instead of 0.4 is half of it.
    expect(narrowestSentence(testOf('ten more nights', 1, 1.2, 0.4), of(0.9, 1.1, 1.3))).toBe(
      'Of single steps, this would narrow it most: ten more nights. It would take 50 % off the width of the interval and settle the matter with a chance of 40 %.',
    );
  });
});

describe('the sources of the doubt', () => {
  test('lie end to end and make up the whole, however small some of them are', () => {
    const shares = fc.array(fc.integer({ min: 1, max: 1000 }), {
      minLength: 1,
      maxLength: doubtSources.length,
    });
    fc.assert(
      fc.property(shares, (weights) => {
        const whole = weights.reduce((sum, weight) => sum + weight, 0);
        const pieces = piecesOf(
          weights.map((weight, i) => ({ source: doubtSources[i], share: weight / whole })),
        );
        const end = pieces.reduce((at, { from, share }) => {
          expect(from).toBeCloseTo(at, 9); // rounding only
          return from + share;
        }, 0);
        expect(end).toBeCloseTo(1, 9);
      }),
    );
  });

  test('below 5 % are told together', () => {
    const pieces = piecesOf([
      { source: 'model', share: 0.93 },
      { source: 'wind', share: 0.04 },
      { source: 'sun', share: 0.03 },
    ]);
    expect(pieces.map(({ name }) => name)).toEqual(['the method itself', 'all others together']);
    expect(pieces[1].share).toBeCloseTo(0.07);
  });
});

describe('a place that was looked at', () => {
  const look = { place: 'Loft', file: 'loft.csv', expected: null, inWind: null, chance: 1, notes: [] };

  test('has its figure by what was seen there', () => {
    expect(figureOfPlace({ ...look, kind: 'void', index: of(0, 0.1, 0.2) })).toBe('0.00 to 0.20 (0.10)');
    expect(figureOfPlace({ ...look, kind: 'void-moisture', excessGM3: of(1, 1.5, 2) })).toBe(
      '1.00 to 2.00 (1.50) g/m³',
    );
  });

  test.each([
    [1, 'over 99 %'],
    [0.42, '42 %'],
    [0.004, '0.4 %'],
    [0.0001, 'under 0.1 %'],
    [null, 'not known'],
  ])('with a chance of %s is told as %s', (chance, told) => {
    expect(chanceAlone(chance)).toBe(told);
  });
});

test('what a phone’s ruler names fits beside its figure: fourteen letters at most', () => {
  const names = [...methods.map((it) => methodsInBrief[it]), ...furtherTests.map((it) => testsInBrief[it])];
  expect(names.filter((name) => name.length > 14)).toEqual([]);
});
