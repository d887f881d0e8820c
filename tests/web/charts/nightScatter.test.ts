/** The cooling rate against the difference in temperature, as places of a picture. */
import { describe, expect, test } from 'vitest';
import type { NightResult, StageResult } from '../../../src/assessment.ts';
import { dashOf, nightScatter, outlineOf } from '../../../web/charts/nightScatter.ts';

const box = { width: 500, height: 300, left: 50, right: 50, top: 20, bottom: 30 };

const night = (
  day: number,
  differenceK: number | null,
  rateKPerH: number | null,
  used = true,
): NightResult => ({
  date: `2027-01-${String(day).padStart(2, '0')}`,
  from: null,
  to: null,
  used,
  heated: false,
  reasons: [],
  dropK: 1,
  rateKPerH,
  meanDifferenceK: differenceK,
  timeConstantH: 50,
  timeConstantSeH: 3,
});
const stage = (nights: NightResult[], timeConstantH: StageResult['timeConstantH']): StageResult => ({
  name: 'S',
  from: null,
  to: null,
  nights,
  timeConstantH,
  estimates: [],
  tier: 'loggers',
  heatLossWK: null,
  gap: null,
  next: [],
  notes: [],
});
const fifty = { value: 50, low: 40, high: 60 };

describe('the picture', () => {
  test('a night that cools just as the time constant has it lies on the line', () => {
    // 15 K over a time constant of 50 h is 0.3 K/h
    const { marks, lines } = nightScatter([stage([night(1, 15, 0.3), night(2, 10, 0.15)], fifty)], box);
    const [from, to] = lines[0].line;
    const onLine = (x: number) => from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
    const [low, high] = marks;
    expect(high.y).toBeCloseTo(onLine(high.x), 9);
    expect(low.y).toBeGreaterThan(onLine(low.x)); // slower: nearer to the foot
  });

  test('the line begins where nothing is warmer and nothing cools', () => {
    const { lines, ticks } = nightScatter([stage([night(1, 15, 0.3)], fifty)], box);
    expect(lines[0].line[0]).toEqual({ x: 50, y: 270 });
    expect(ticks.x[0]).toMatchObject({ value: 0, at: 50 });
    expect(ticks.y[0]).toMatchObject({ value: 0, at: 270 });
  });

  test('the shade holds the line: the shorter time constant is the steeper edge', () => {
    const { lines } = nightScatter([stage([night(1, 15, 0.25)], { value: 50, low: 45, high: 60 })], box);
    const [zero, ...edge] = lines[0].wedge;
    const slope = ({ x, y }: { x: number; y: number }) => (zero.y - y) / (x - zero.x);
    const own = slope(lines[0].line[1]);
    expect(slope(edge[0])).toBeCloseTo((own * 50) / 45, 9);
    expect(slope(edge.at(-1) ?? zero)).toBeCloseTo((own * 50) / 60, 9);
  });

  test('everything drawn stays inside of its box, the shade as well', () => {
    const { marks, lines } = nightScatter(
      [stage([night(1, 15, 0.3), night(2, 5, 0.4, false)], { value: 50, low: 1, high: 1000 })],
      box,
    );
    for (const { x, y } of [...marks, ...lines.flatMap(({ line, wedge }) => [...line, ...wedge])]) {
      expect(x).toBeGreaterThanOrEqual(50 - 1e-9);
      expect(x).toBeLessThanOrEqual(450 + 1e-9);
      expect(y).toBeGreaterThanOrEqual(20 - 1e-9);
      expect(y).toBeLessThanOrEqual(270 + 1e-9);
    }
  });

  test('a heated night far off does not squeeze the others: it is counted instead', () => {
    const usual = [night(1, 15, 0.3), night(2, 12, 0.25)];
    const { beyond, ticks } = nightScatter([stage([...usual, night(3, 15, 9, false)], fifty)], box);
    expect(beyond).toBe(1);
    expect(ticks.y).toEqual(nightScatter([stage(usual, fifty)], box).ticks.y);
  });

  test('a night that grew warmer, or was warmer outside, is counted too, and one without figures is not', () => {
    const odd = [night(2, 10, -0.1, false), night(3, -2, 0.1, false), night(4, null, null, false)];
    const { beyond, marks } = nightScatter([stage([night(1, 15, 0.3), ...odd], fifty)], box);
    expect([beyond, marks.length]).toEqual([2, 1]);
  });

  test('marks stand in the order of their differences, as the arrow keys walk them', () => {
    const nights = [night(1, 15, 0.3), night(2, 10, 0.2), night(3, 12, 0.2)];
    expect(nightScatter([stage(nights, null)], box).marks.map(({ date }) => date.slice(-2))).toEqual([
      '02',
      '03',
      '01',
    ]);
  });

  test('without a time constant there is no line, and without a night nothing fails', () => {
    expect(nightScatter([stage([night(1, 15, 0.3, false)], null)], box).lines).toEqual([]);
    expect(nightScatter([stage([], null)], box).marks).toEqual([]);
  });
});

test('four stages have four shapes and four kinds of line', () => {
  const four = [0, 1, 2, 3];
  expect(new Set(four.map((it) => outlineOf(it, { x: 0, y: 0 }, 5))).size).toBe(4);
  expect(new Set(four.map((it) => dashOf(it).join(' '))).size).toBe(4);
});
