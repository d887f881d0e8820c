import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type MarkRow, markWords, placeWords, spanOf } from '../../../src/sheet/drawing/ruleWords.ts';

const drawn: MarkRow = { kind: 'drawn', low: 300, at: 300, high: 300, length: 160 };

describe('placeWords', () => {
  test('words stand over their mark where nothing is in the way', () => {
    const [place] = placeWords([{ kind: 'measured', low: 300, at: 480, high: 700, length: 200 }], 1000);
    expect(place).toEqual({ anchor: 'middle', x: 480 });
  });

  test('words move along their interval rather than cross the drawn line', () => {
    const rows: MarkRow[] = [{ kind: 'measured', low: 200, at: 320, high: 700, length: 200 }, drawn];
    const [from, to] = spanOf(placeWords(rows, 1000)[0], 200);
    expect(to < 300 || from > 300).toBe(true);
    expect(from).toBeLessThanOrEqual(708);
  });

  test('a drawn value’s words stand beside its line, on the side with room', () => {
    expect(placeWords([drawn], 1000)[0]).toEqual({ anchor: 'start', x: 308 });
    expect(placeWords([{ ...drawn, low: 900, at: 900, high: 900 }], 1000)[0]).toEqual({
      anchor: 'end',
      x: 892,
    });
  });

  test('a fine line is crossed before words go far from their mark', () => {
    const above = [120, 180].map(
      (at): MarkRow => ({ kind: 'measured', low: 10, at, high: 290, length: 100 }),
    );
    const below: MarkRow = { kind: 'measured', low: 20, at: 150, high: 290, length: 100 };
    const [from, to] = spanOf(placeWords([...above, below], 300)[2], 100);
    expect(from).toBeLessThan(150);
    expect(to).toBeGreaterThan(150);
  });

  test('whatever the marks, words that fit stay on the sheet', () => {
    const mark = fc.record({
      kind: fc.constantFrom('measured', 'drawn', 'other'),
      ends: fc.tuple(fc.integer({ min: 0, max: 296 }), fc.integer({ min: 0, max: 296 })),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      length: fc.integer({ min: 40, max: 296 }),
    });
    fc.assert(
      fc.property(fc.array(mark, { minLength: 1, maxLength: 5 }), (marks) => {
        const rows = marks.map(({ kind, ends, share, length }): MarkRow => {
          const [low, high] = [Math.min(...ends), Math.max(...ends)];
          const at = low + share * (high - low);
          return kind === 'drawn' ? { kind, low: at, at, high: at, length } : { kind, low, at, high, length };
        });
        for (const [i, place] of placeWords(rows, 296).entries()) {
          const [from, to] = spanOf(place, rows[i].length);
          expect(from).toBeGreaterThanOrEqual(-12);
          expect(to).toBeLessThanOrEqual(308);
        }
      }),
    );
  });
});

test('a name that leaves no room beside it stands over its figure, and is cut only where a line is too short', () => {
  const figure = '98 to 217 W/K (146)';
  expect(markWords('Before', figure, 296)).toMatchObject({ label: 'Before', over: false });
  expect(markWords('Before the closing', figure, 296)).toMatchObject({
    label: 'Before the closing',
    over: true,
  });
  const long = markWords('Before the loft hatch was fitted and the holes were filled', figure, 296);
  expect(long.label).toMatch(/^Before the loft hatch.*…$/);
  expect(long.length).toBeLessThanOrEqual(296);
});
