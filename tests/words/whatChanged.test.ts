import { expect, test } from 'vitest';
import type { Estimate } from '../../src/assessment.ts';
import {
  changeInWattsSentence,
  energyBetween,
  energyChangeBetween,
  powerBetween,
} from '../../src/words/whatChanged.ts';

const changed = (heatLossDifferenceWK: Estimate | null) =>
  changeInWattsSentence({
    before: 'Before',
    after: 'After',
    heatLossRatio: null,
    timeConstantRatio: null,
    heatLossDifferenceWK,
    notes: [],
  });

test.each([
  [{ value: -21, low: -35, high: -7.3 }, 'it now loses 7 to 35 watts less.'],
  [{ value: 21, low: 7.3, high: 35 }, 'it now loses 7 to 35 watts more.'],
  [{ value: 0, low: -12, high: 9 }, 'it now loses something between 12 watts less and 9 watts more.'],
])('a change of %o is told by its direction', (it, told) => {
  expect(changed(it)).toBe(`For every degree that it is colder outside ${told}`);
});

test('where no change in watts is known, none is told', () => {
  expect(changed(null)).toBeNull();
});

test('a year and a cold day are told from the lower to the upper figure, with the unit once where it is the same', () => {
  expect(energyBetween({ value: 7640, low: 6449, high: 8929 })).toBe('6450 to 8930 kWh');
  expect(powerBetween({ value: 1100, low: 940, high: 1260 })).toBe('940 W to 1.3 kW');
});

test('a change over a year keeps its sign, and never a zero below zero', () => {
  expect(energyChangeBetween({ value: -1227, low: -2061, high: -434 })).toBe('−2060 to −434 (−1230)');
});
