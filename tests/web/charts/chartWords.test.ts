import { describe, expect, test } from 'vitest';
import type { NightResult } from '../../../src/assessment.ts';
import {
  celsius,
  shortReason,
  signedKelvins,
  spokenNight,
  wrapped,
} from '../../../src/sheet/drawing/chartWords.ts';
import { reasonsInBrief } from '../../../src/words/index.ts';

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
  const because = (code: string): NightResult => ({
    ...night,
    used: false,
    reasons: [{ code, text: 'a long sentence with its particulars' }],
  });

  test('the first reason is told in brief', () => {
    expect(shortReason(because('heater-on'))).toBe('a heater was on');
    expect(shortReason(because('uneven-fall'))).toBe('the fall is uneven');
  });

  test('a reason that has no brief form still says that the night was left out', () => {
    expect(shortReason(because('from an older version'))).toBe('left out');
  });

  test('no brief reason needs more than four lines of the narrowest band', () => {
    // 54 px of words on a band of 64 px less its edges, 6.8 px a letter: seven letters on a line
    for (const code of Object.keys(reasonsInBrief)) {
      const lines = wrapped(shortReason(because(code)), 7);
      expect(lines.length, code).toBeLessThanOrEqual(4);
      expect(Math.max(...lines.map((line) => line.length)), code).toBeLessThanOrEqual(8);
    }
  });
});

describe('wrapped', () => {
  test('no word is lost, and only a long word makes a long line', () => {
    const text = 'only 1.5 h of free cooling once heat had left';
    const lines = wrapped(text, 9);
    expect(lines.join(' ')).toBe(text);
    expect(lines.filter((line) => line.length > 9 && line.includes(' '))).toEqual([]);
  });
});
