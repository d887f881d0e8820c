import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { languageForIntl } from '../../../web/charts/language.ts';
import { between, panned, SHORTEST, type View, within, zoomed } from '../../../web/charts/view.ts';

const bounds: View = { from: 0, to: 100_000 };

describe('zoomed', () => {
  test('the instant under the pointer stays where it is', () => {
    const view = zoomed({ from: 20_000, to: 60_000 }, 30_000, 0.5, bounds);
    expect(view).toEqual({ from: 25_000, to: 45_000 });
  });

  test('wider than the record is the record', () => {
    expect(zoomed({ from: 20_000, to: 90_000 }, 30_000, 4, bounds)).toEqual(bounds);
  });

  test('it ends at ten minutes', () => {
    const view = zoomed({ from: 0, to: 1000 }, 500, 0.001, bounds);
    expect(view.to - view.from).toBeCloseTo(SHORTEST, 9);
  });
});

describe('panned', () => {
  test('the length stays, and the record is not left', () => {
    expect(panned({ from: 10_000, to: 20_000 }, 5_000, bounds)).toEqual({ from: 15_000, to: 25_000 });
    expect(panned({ from: 10_000, to: 20_000 }, -50_000, bounds)).toEqual({ from: 0, to: 10_000 });
    expect(panned({ from: 10_000, to: 20_000 }, 500_000, bounds)).toEqual({ from: 90_000, to: 100_000 });
  });
});

describe('between', () => {
  test('a drag to the left gives the same view as one to the right', () => {
    expect(between(40_000, 20_000, bounds)).toEqual(between(20_000, 40_000, bounds));
  });

  test('a drag of a pixel gives the shortest view about it', () => {
    expect(between(50_000, 50_001, bounds)).toEqual({ from: 49_700.5, to: 50_300.5 });
  });
});

test('whatever is done, a view lies within the record and runs forward', () => {
  const instant = fc.double({ min: 0, max: 100_000, noNaN: true });
  const moves = fc.array(
    fc.oneof(
      fc.record({ about: instant, factor: fc.double({ min: 0.01, max: 100, noNaN: true }) }),
      fc.record({ by: fc.double({ min: -200_000, max: 200_000, noNaN: true }) }),
    ),
  );
  fc.assert(
    fc.property(moves, (all) => {
      const end = all.reduce<View>(
        (view, move) =>
          'by' in move ? panned(view, move.by, bounds) : zoomed(view, move.about, move.factor, bounds),
        bounds,
      );
      // rounding only: 1e-6 s on a record of a day
      expect(end.from).toBeGreaterThanOrEqual(-1e-6);
      expect(end.to).toBeLessThanOrEqual(100_000 + 1e-6);
      expect(end.to - end.from).toBeGreaterThanOrEqual(SHORTEST - 1e-6);
    }),
  );
});

test('a record shorter than the shortest view is shown whole', () => {
  expect(within({ from: -100, to: 500 }, { from: 0, to: 300 })).toEqual({ from: 0, to: 300 });
});

test('a language that Intl refuses becomes one that it takes', () => {
  expect(languageForIntl('en-US@posix')).toBe('en-GB');
  expect(languageForIntl('de')).toBe('de');
});
