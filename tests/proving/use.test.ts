import { describe, expect, test } from 'vitest';
import { siteDays, without } from './use.ts';

const start = Date.parse('2027-01-01T00:00:00Z') / 1000;

describe('siteDays', () => {
  test('heats on most days and never between 22:00 and 05:00', () => {
    const { heating } = siteDays(5, start, 100, []);
    const days = new Set(heating.map(({ from }) => Math.floor(from / 86400)));
    expect(days.size).toBeGreaterThan(80);
    for (const { from, to } of heating) {
      expect((from / 3600) % 24).toBeGreaterThan(5);
      expect((to / 3600) % 24).toBeLessThan(22);
    }
  });

  test('switches nothing while the house is left alone', () => {
    const alone = { from: start + 20 * 86400 + 13 * 3600, to: start + 21 * 86400 + 9 * 3600 };
    const { heating, working } = siteDays(5, start, 100, [alone]);
    for (const { from, to } of [...heating, ...working])
      expect(to <= alone.from || from >= alone.to).toBe(true);
  });
});

describe('without', () => {
  test('cuts a span in two around what is taken out', () => {
    expect(without([{ from: 0, to: 10 }], [{ from: 4, to: 6 }])).toEqual([
      { from: 0, to: 4 },
      { from: 6, to: 10 },
    ]);
  });
});
