/** What is said of a change, to the builder by its code and to the homeowner in one sentence. */
import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../../src/assessment.ts';
import type { AnnualNote, ChangeNote } from '../../../src/gap/index.ts';
import { say } from '../../../src/words/index.ts';
import {
  changeOfYearSentence,
  smallestChangeSentence,
  yearSentence,
} from '../../../src/words/whatChanged.ts';

test.each<[ChangeNote | AnnualNote, string]>([
  [
    { code: 'smallest-change', change: 0.14, nights: [16, 15] },
    'With 16 and 15 nights, four tests in five would show a fall of 14 %',
  ],
  [
    {
      code: 'nights-to-show',
      plan: [
        { change: 0.05, nights: null },
        { change: 0.1, nights: null },
        { change: 0.2, nights: 6 },
      ],
    },
    '6 nights on each side show a fall of 20 %; not even 60 on each side show one of 5 % or 10 %.',
  ],
  [
    { code: 'nights-to-show', plan: [{ change: 0.2, nights: null }] },
    'As this house’s nights scatter, not even 60 on each side show one of 20 %.',
  ],
  [{ code: 'only-one-stage', plan: [] }, 'There is one stage only, so nothing is compared yet.'],
  [{ code: 'side-without-nights', names: ['A', 'B'] }, '“A”, “B” have fewer than two nights that count'],
  [
    { code: 'shared-nights-left-out', dates: ['2027-01-14'] },
    'the night of 14 January lies in both and is left',
  ],
  [{ code: 'change-over-standard-year', degreeDays: 2463, base: 15.5 }, '2463 K·day below 15.5 °C'],
  [{ code: 'no-degree-days' }, 'degree days and 0.024, the difference in W/K is kWh'],
  [
    { code: 'difference-apart', before: 8.2, after: 14.1 },
    '8.2 K warmer inside than outside before and 14.1 K',
  ],
  [{ code: 'wind-apart', before: 5.04, after: 2 }, 'The wind was 5.0 m/s before and 2.0 m/s after.'],
  [{ code: 'not-leakage-alone', names: ['Roof'] }, '“Roof” came or went between the stages'],
  [{ code: 'annual-vents-added', added: 15.84, said: true }, 'for the year 15.8 W/K are added'],
  [
    { code: 'annual-for-orientation', degreeDays: 2463, base: 15.5, inside: 20, outside: -3 },
    '20.0 °C inside and −3.0 °C outside',
  ],
])('%o is said with its figures', (note, words) => {
  expect(say(note).text).toContain(words);
});

describe('a homeowner is told', () => {
  const comparison: Assessment['comparisons'][number] = {
    before: 'Before',
    after: 'After',
    heatLossRatio: null,
    timeConstantRatio: null,
    notes: [],
  };
  const change = (low: number, high: number) =>
    changeOfYearSentence({ ...comparison, energyKWhPerYear: { value: (low + high) / 2, low, high } });

  test('less heat, more heat, or that it may be either', () => {
    expect(change(-2060, -434)).toBe('Over a standard year that is 434 to 2060 kWh less heat.');
    expect(change(434, 2060)).toBe('Over a standard year that is 434 to 2060 kWh more heat.');
    expect(change(-600, 150)).toBe(
      'Over a standard year that is something between 600 kWh less and 150 kWh more heat.',
    );
    expect(changeOfYearSentence(comparison)).toBeNull();
  });

  test('what nights like these can show', () => {
    expect(smallestChangeSentence({ ...comparison, smallestChangePercent: 13.99 })).toBe(
      'Nights like these show a fall of 14 % or more; a smaller one can hide in the weather.',
    );
    expect(smallestChangeSentence(comparison)).toBeNull();
  });

  test('what a year and a cold day need, for orientation', () => {
    const annual = {
      heatDemandKWhPerYear: { value: 7640, low: 6450, high: 8930 },
      heatLoadW: { value: 2970, low: 2510, high: 3470 },
      degreeDays: { baseC: 15.5, kelvinDays: 2463, place: 'United Kingdom' },
      designDay: { insideC: 20, outsideC: -3 },
      notes: [],
    };
    expect(yearSentence({ annual })).toBe(
      'It needs 6450 to 8930 kWh of heat in a usual year with usual occupants, and 2.5 to 3.5 kW on a day of −3 °C: for orientation only.',
    );
    expect(yearSentence({ annual: { ...annual, heatDemandKWhPerYear: null } })).toBe(
      'It needs 2.5 to 3.5 kW on a day of −3 °C: for orientation only.',
    );
    expect(yearSentence({ annual: null })).toBeNull();
  });
});
