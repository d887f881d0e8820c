import { describe, expect, test } from 'vitest';
import { stillNeeded } from '../../../web/stages/nightsNeeded.ts';
import { draftOf, emptyDraft, problemsOfDraft, stageOf } from '../../../web/stages/stageDraft.ts';
import { ratioMarks, savingMarks } from '../../../web/stages/stageMarks.ts';

const before = { name: 'Before', from: '2027-01-09', to: '2027-01-25T08:00', complete: false };
const after = { name: 'After', from: '2027-01-28T08:00', to: '2027-02-13T12:00' };

describe('a comparison on its rulers', () => {
  const comparison = {
    before: 'Before',
    after: 'After',
    heatLossRatio: { value: 0.85, low: 0.76, high: 0.94 },
    timeConstantRatio: null,
    heatLossDifferenceWK: { value: -21, low: -35, high: -7 },
    notes: [],
  };

  test('stands beside “unchanged”: 1 for a ratio, 0 for watts', () => {
    expect(ratioMarks(comparison).map(({ label, value }) => [label, value])).toEqual([
      ['Heat loss', 0.85],
      ['Unchanged', 1],
    ]);
    expect(savingMarks(comparison).map(({ label, value }) => [label, value])).toEqual([
      ['Change', -21],
      ['Unchanged', 0],
    ]);
  });

  test('has no ruler where nothing could be compared', () => {
    expect(ratioMarks({ ...comparison, heatLossRatio: null })).toEqual([]);
    expect(savingMarks({ ...comparison, heatLossDifferenceWK: null })).toEqual([]);
  });
});

test.each([
  [4, 16, 15, 'none'],
  [20, 16, 15, '4 before, 5 after'],
  [16, 16, 0, '16 after'],
])('of %i nights on each side, with %i and %i there, still needed are: %s', (nights, have, and, needed) => {
  expect(stillNeeded(nights, have, and)).toBe(needed);
});

describe('a stage as it is typed', () => {
  test('begins from what is stored, a date alone as its midnight', () => {
    expect(draftOf(before)).toEqual({ ...before, from: '2027-01-09T00:00' });
    expect(draftOf(after).complete).toBe(true);
  });

  test('needs a name of its own and an end after its beginning', () => {
    expect(Object.keys(problemsOfDraft(emptyDraft, []))).toEqual(['name', 'from', 'to']);
    const draft = { ...emptyDraft, name: ' Before ', from: '2027-02-01T00:00', to: '2027-02-01T00:00' };
    expect(problemsOfDraft(draft, ['Before'])).toEqual({
      name: 'Another stage is called so.',
      to: 'It has to end after it begins.',
    });
    expect(problemsOfDraft({ ...draft, to: '2027-02-02T00:00' }, ['After'])).toEqual({});
  });

  test('is kept as it was typed, its name without the blanks around it', () => {
    expect(stageOf({ ...draftOf(before), name: ' Between ' })).toEqual({
      ...before,
      name: 'Between',
      from: '2027-01-09T00:00',
    });
  });
});
