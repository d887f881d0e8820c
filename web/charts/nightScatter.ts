/**
 * How fast the house cooled against how much warmer it was than outdoors: each night a mark, each stage's time constant
 * a line through zero, whose slope is one over it. Pure places in pixels; `NightScatter.tsx` makes marks of them.
 */
import type { Estimate, NightResult, StageResult } from '../../src/assessment.ts';
import { spokenNight } from '../../src/sheet/drawing/chartWords.ts';

export interface Box {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Mark {
  readonly date: string;
  readonly x: number;
  readonly y: number;
  readonly used: boolean;
  /** Which stage's, counted from 0: it has that stage's shape. */
  readonly stage: number;
  readonly spoken: string;
}

export interface StageLine {
  readonly stage: number;
  readonly line: readonly [Point, Point];
  /** Between the steepest and the flattest line of the interval. */
  readonly wedge: readonly Point[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Scatter {
  readonly marks: readonly Mark[];
  readonly lines: readonly StageLine[];
  readonly ticks: { readonly x: readonly Tick[]; readonly y: readonly Tick[] };
  /** Nights with figures that the picture would have to shrink for, or that lie below zero. */
  readonly beyond: number;
}

export interface Tick {
  readonly at: number;
  readonly value: number;
  /** Decimals that tell it from the next. */
  readonly digits: number;
}

/** A night that was left out may lie so far above those that were used. */
const ROOM = 1.5;

export function nightScatter(stages: readonly StageResult[], box: Box): Scatter {
  const all = stages.flatMap(({ nights }, stage) => nights.flatMap((night) => placed(night, stage)));
  const used = all.filter((it) => it.used);
  const [mostDifference, mostRate] = reachOf(used.length > 0 ? used : all, all);
  const slopes = stages.map(({ timeConstantH }) => timeConstantH && slopeOf(timeConstantH));
  const highest = Math.max(mostRate, ...slopes.map((it) => (it?.value ?? 0) * mostDifference));
  const [xAxis, yAxis] = [axisTo(mostDifference), axisTo(highest)];
  const x = (difference: number) => box.left + (difference / xAxis.end) * (box.width - box.left - box.right);
  const y = (rate: number) =>
    box.height - box.bottom - (rate / yAxis.end) * (box.height - box.top - box.bottom);
  const shown = all.filter(
    ({ difference, rate }) => difference >= 0 && difference <= xAxis.end && rate >= 0 && rate <= yAxis.end,
  );
  return {
    marks: shown
      .map(({ night, stage, difference, rate }) => ({
        date: night.date,
        x: x(difference),
        y: y(rate),
        used: night.used,
        stage,
        spoken: spokenNight(night.date, night),
      }))
      .sort((a, b) => a.x - b.x),
    lines: slopes.flatMap((slope, stage) => {
      if (slope === null) return [];
      const end = (of: number) => within(of, xAxis.end, yAxis.end, x, y);
      const zero = { x: x(0), y: y(0) };
      const [high, low] = [end(slope.high), end(slope.low)];
      const corner = { x: x(xAxis.end), y: y(yAxis.end) };
      const cut = high.y === corner.y && low.x === corner.x ? [corner] : [];
      return [{ stage, line: [zero, end(slope.value)], wedge: [zero, high, ...cut, low] }];
    }),
    ticks: { x: xAxis.ticks.map(placedAt(x)), y: yAxis.ticks.map(placedAt(y)) },
    beyond: all.length - shown.length,
  };
}

interface Placed {
  readonly night: NightResult;
  readonly stage: number;
  readonly used: boolean;
  readonly difference: number;
  readonly rate: number;
}

function placed(night: NightResult, stage: number): Placed[] {
  const { meanDifferenceK: difference, rateKPerH: rate, used } = night;
  return difference === null || rate === null ? [] : [{ night, stage, used, difference, rate }];
}

/** As far as the used nights go, and somewhat further where others do. */
function reachOf(used: readonly Placed[], all: readonly Placed[]): readonly [number, number] {
  const reach = (of: (it: Placed) => number, least: number) => {
    const own = Math.max(least, ...used.map(of));
    const others = all.map(of).filter((it) => it <= ROOM * own);
    return Math.max(own, ...others);
  };
  return [reach(({ difference }) => difference, 1), reach(({ rate }) => rate, 0.01)];
}

/** K/h for each K between inside and outside. */
const slopeOf = ({ value, low, high }: Estimate): Estimate => ({
  value: 1 / value,
  low: 1 / high,
  high: 1 / Math.max(low, 1e-9),
});

/** Where a line through zero leaves the picture. */
function within(
  slope: number,
  xEnd: number,
  yEnd: number,
  x: (it: number) => number,
  y: (it: number) => number,
): Point {
  const leavesAbove = slope * xEnd > yEnd;
  return leavesAbove ? { x: x(yEnd / slope), y: y(yEnd) } : { x: x(xEnd), y: y(slope * xEnd) };
}

/** From zero to beyond `most` in round steps. */
function axisTo(most: number) {
  const size = 10 ** Math.floor(Math.log10(most));
  const step = [0.2, 0.5, 1, 2].map((n) => n * size).find((it) => most / it <= 6) ?? 2 * size;
  const steps = Math.max(1, Math.ceil((most / step) * 1.02));
  const digits = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const ticks = Array.from({ length: steps + 1 }, (_, i) => ({ value: i * step, digits }));
  return { end: steps * step, ticks };
}

const placedAt =
  (place: (value: number) => number) =>
  (tick: Omit<Tick, 'at'>): Tick => ({ ...tick, at: place(tick.value) });

/** The outline of a stage's mark about a point: circle, triangle, square, diamond, and on from the first. */
export function outlineOf(stage: number, { x, y }: Point, size: number): string {
  const corners = shapes[stage % shapes.length];
  if (corners === null)
    return `M${x - size} ${y}a${size} ${size} 0 1 0 ${2 * size} 0a${size} ${size} 0 1 0 ${-2 * size} 0Z`;
  return `M${corners.map(([a, b]) => `${x + a * size} ${y + b * size}`).join('L')}Z`;
}

/** Corners in sizes of the mark; null is a circle. */
const shapes: readonly (readonly (readonly [number, number])[] | null)[] = [
  null,
  [
    [0, -1.25],
    [1.15, 0.85],
    [-1.15, 0.85],
  ],
  [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  [
    [0, -1.3],
    [1.3, 0],
    [0, 1.3],
    [-1.3, 0],
  ],
];

/** Strokes and gaps of a stage's line [px]; the first is solid. */
export const dashOf = (stage: number): readonly number[] => dashes[stage % dashes.length];
const dashes: readonly (readonly number[])[] = [[], [10, 4], [3, 4], [12, 4, 2, 4]];
