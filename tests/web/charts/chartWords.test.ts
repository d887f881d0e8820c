import { describe, expect, test } from 'vitest';
import type { NightResult } from '../../../src/assessment.ts';
import { celsius, shortReason, signedKelvins, spokenNight, wrapped } from '../../../web/charts/chartWords.ts';

const night: NightResult = {
  date: '2027-02-12',
  from: null,
  to: null,
  used: true,
  heated: false,
  reasons: [],
  dropK: 1.17,
  rateKPerH: 0.13,
  meanDifferenceK: 13,
  timeConstantH: 115,
  timeConstantSeH: 12,
};
const leftOut = (text: string): NightResult => ({ ...night, used: false, reasons: [{ code: 'x', text }] });

describe('spokenNight', () => {
  test('a used night is told with its drop', () => {
    expect(spokenNight('2027-02-12', night)).toBe('Night of 12 February: fell 1.2 K, used');
  });

  test('a heated night that was left out is told with its reason', () => {
    const heated = { ...leftOut('a metered heater gave 18.0 kWh'), heated: true };
    expect(spokenNight('2027-02-04', heated)).toBe(
      'Night of 4 February: fell 1.2 K, heated, left out: a metered heater gave 18.0 kWh',
    );
  });

  test('a house that warmed is said to have risen', () => {
    expect(spokenNight('2027-02-12', { ...night, dropK: -0.4 })).toBe(
      'Night of 12 February: rose 0.4 K, used',
    );
  });

  test('without a fitted window there is no drop to tell', () => {
    const none = { ...leftOut('no inside readings that night'), dropK: null };
    expect(spokenNight('2027-02-12', none)).toBe(
      'Night of 12 February: left out: no inside readings that night',
    );
  });
});

describe('signedKelvins', () => {
  test('a fall has a true minus, a rise a plus, and what rounds to nothing neither', () => {
    expect(signedKelvins(-1.17)).toBe('−1.2 K');
    expect(signedKelvins(0.3)).toBe('+0.3 K');
    expect(signedKelvins(-0.04)).toBe('0.0 K');
    expect(celsius(-0.04)).toBe('0.0 °C');
    expect(celsius(-3.2)).toBe('−3.2 °C');
  });
});

describe('shortReason', () => {
  test.each([
    ['the fall is uneven (1.1 K off the curve): something was switched or opened', 'the fall is uneven'],
    ['only 2.3 K warmer inside than outside, 5.0 K needed', 'only 2.3 K warmer inside than outside'],
    [
      'heat came in until the end of the night: nothing cooled freely',
      'heat came in until the end of the night',
    ],
    ['left out by hand: hatch left open', 'left out by hand'],
    ['a metered heater gave 18.0 kWh', 'a metered heater gave 18.0 kWh'],
  ])('“%s” is “%s” on a band', (text, short) => {
    expect(shortReason(leftOut(text))).toBe(short);
  });
});

describe('wrapped', () => {
  test('a figure is not parted from its unit', () => {
    expect(wrapped('a metered heater gave 18.0 kWh', 8)).toEqual([
      'a',
      'metered',
      'heater',
      'gave',
      '18.0\u00a0kWh',
    ]);
  });

  test('no word is lost, and only a long word makes a long line', () => {
    const text = 'only 1.5 h of free cooling once heat had left';
    const lines = wrapped(text, 9);
    expect(lines.join(' ').replaceAll('\u00a0', ' ')).toBe(text);
    expect(lines.filter((line) => line.length > 9 && line.includes(' '))).toEqual([]);
  });
});
