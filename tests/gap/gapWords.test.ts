import { describe, expect, test } from 'vitest';
import type { StageResult } from '../../src/assessment.ts';
import { apartSentence, gapSentence, say, sayExplanation } from '../../src/words/index.ts';

type GapResult = NonNullable<StageResult['gap']>;
type ElementResult = NonNullable<GapResult['elements']>[number];

const ratio = { value: 1.3, low: 1.1, high: 1.5 };
const element = (name: string, able: boolean): ElementResult => ({
  name,
  uValueDrawn: 0.2,
  uValueAlone: able ? { value: 0.4, low: 0.3, high: 0.5 } : null,
  uValueEvenly: null,
  couldExplainPercent: [],
  notes: [],
});
const gap = (low: number, high: number, elements: readonly ElementResult[] = []): GapResult => ({
  ratio,
  verdict: 'undecided',
  excessWK: { value: (low + high) / 2, low, high },
  elements: [...elements],
});

describe('the gap for the people who live there', () => {
  test('is in watts for every degree, with what could be the cause', () => {
    expect(gapSentence(gap(12, 28, [element('Roof', true), element('Hatch', false)]))).toBe(
      'For every degree that it is colder outside it loses 12 to 28 watts more than designed. ' +
        'Any one of these could be the cause, or draughts, or several a little: “Roof”. The loggers cannot tell which.',
    );
  });
  test('that may be none at all says so', () => {
    expect(gapSentence(gap(-3, 28))).toContain('up to 28 watts more than designed, or nothing more');
  });
  test('of a house that loses less than drawn is good news', () => {
    const meets = { verdict: 'meets' } as const;
    expect(gapSentence({ ...gap(-20, -5), ...meets })).toBe(
      'It loses no more than it was designed to: nothing needs to be looked for.',
    );
    expect(gapSentence({ ...gap(-20, 5), ...meets })).toContain('as far as can be told');
  });
  test('is no good news as long as the verdict is open', () => {
    expect(gapSentence(gap(-20, -5))).not.toContain('nothing needs to be looked for');
  });
  test('that no single element could hold says that', () => {
    expect(gapSentence(gap(50, 90, [element('Hatch', false)]))).toContain('No one part of the shell');
  });
  test('of a house that is not finished is not told', () => {
    expect(gapSentence({ ratio, verdict: null })).toBeNull();
  });
});

test.each([
  [0.124, 'could explain up to 12 % of the gap'],
  [1, 'could explain all of the gap'],
])('a share of %f: %s', (share, said) => {
  expect(sayExplanation('more-timber', share, 0.192)).toContain(`${said} (U-value 0.19 W/(m²K))`);
});

test('an element that cannot hold the gap is told with what it would explain at most', () => {
  expect(
    say({
      code: 'element-cannot-carry',
      name: 'Hatch',
      as: 'without insulation',
      transmittance: 2.6,
      share: 0.14,
    }).text,
  ).toBe(
    '“Hatch” cannot hold the gap alone: even wholly without its insulation (about 2.60 W/(m²K)) it would explain 14 % of it.',
  );
});

describe('leakage and fabric', () => {
  const stage = (apart: StageResult['apart']) => ({ apart }) as StageResult;
  test('told apart are ranges, and no pressure test’s figure', () => {
    const sentence = apartSentence(
      stage({ leakageWK: { value: 30, low: 15, high: 60 }, fabricWK: { value: 80, low: 50, high: 100 } }),
    );
    expect(sentence).toContain('15 to 60 W/K go with the air and 50 to 100 W/K through walls');
    expect(sentence).toContain('not under a pressure test');
  });
  test('that could not be told apart are not mentioned', () => {
    expect(apartSentence(stage(null))).toBeNull();
  });
});
