/** The fall of one night as paths and marks: degrees at the left, an upright ruler of what was lost at the right. */
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { figures } from '../../src/words/index.ts';
import { timeTicks } from '../charts/timeTicks.ts';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** All in px of the picture. */
export interface FallDrawing {
  readonly box: Box;
  /** What of the box lies between sunset and sunrise. */
  readonly night: { readonly left: number; readonly right: number };
  readonly inside: string;
  readonly fitted: string;
  /** The area of the 95 % interval as drawn, and its two edges; null where it cannot be told. */
  readonly band: { readonly area: string; readonly edges: readonly [string, string] } | null;
  readonly degrees: readonly Tick[];
  readonly times: readonly Tick[];
  readonly ruler: {
    /** From the evening's temperature down. */
    readonly top: number;
    readonly graduations: readonly (Tick & { readonly long: boolean })[];
    readonly measured: number;
    readonly drawn: { readonly from: number; readonly to: number; readonly at: number } | null;
  };
}

export interface Tick {
  readonly at: number;
  readonly text: string;
}

export const FALL_HEIGHT = 300; // [px]
const LEFT = 44; // [px], the degrees
const RIGHT = 64; // [px], the ruler
const TOP = 12;
const BOTTOM = 42;
/** Before and after the fitted hours [s]. */
const MARGIN = 3600;
/** Between two figures at least [px]. */
const APART = 34;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5]; // [K]

/** @returns null where nothing of the night was fitted */
export function fallDrawing(
  curve: NightCurve,
  { dropK, foretoldDropK }: NightResult,
  width: number,
  timeZone: string,
): FallDrawing | null {
  const { time, window, sunset, sunrise, inside, fitted, foretold } = curve;
  if (window === null || dropK === null) return null;
  const shown = time.flatMap((at, i) => (at >= window.from - MARGIN && at <= window.to + MARGIN ? [i] : []));
  const start = shown.map((i) => (time[i] >= window.from ? inside[i] : null)).find((it) => it !== null);
  if (start === null || start === undefined) return null;
  const from = time[shown[0]];
  const to = time[shown[shown.length - 1]];
  const box: Box = { left: LEFT, right: width - RIGHT, top: TOP, bottom: FALL_HEIGHT - BOTTOM };
  // What comes before and after may run out of the picture.
  const counts = shown.filter((i) => time[i] >= window.from && time[i] <= window.to);
  const known = [inside, fitted, foretold?.low ?? [], foretold?.high ?? []]
    .flatMap((series) => counts.map((i) => series[i]))
    .filter((it): it is number => typeof it === 'number');
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const air = Math.max(0.1, (most - least) * 0.15);
  const perKelvin = (box.bottom - box.top) / (most - least + 2 * air);
  const y = (temperature: number) => box.top + (most + air - temperature) * perKelvin;
  const x = (at: number) => box.left + ((at - from) / (to - from)) * (box.right - box.left);
  const within = (at: number) => Math.min(Math.max(x(at), box.left), box.right);
  const points = (series: readonly (number | null)[]) =>
    shown
      .map((i) => [x(time[i]), series[i]] as const)
      .map(([at, it]) => it !== null && ([at, y(it)] as const));
  const step = STEPS.find((it) => it * perKelvin >= APART) ?? STEPS[STEPS.length - 1];
  const places = step < 1 ? 1 : 0;
  const mostLost = Math.max(dropK, foretoldDropK?.high ?? 0, step);
  return {
    box,
    night: { left: within(sunset), right: within(sunrise) },
    inside: pathOf(points(inside)),
    fitted: pathOf(points(fitted)),
    band: foretold === undefined ? null : bandOf(points(foretold.low), points(foretold.high)),
    degrees: multiples(step, least - air, most + air).map((at) => ({
      at: y(at),
      text: figures.decimal(at, places),
    })),
    times: timeTicks(from, to, box.right - box.left, timeZone).map(({ at, label }) => ({
      at: x(at),
      text: label.split('\n')[0],
    })),
    ruler: {
      top: y(start),
      graduations: multiples(step / 2, 0, mostLost).map((lost) => {
        const long = Math.abs(lost / step - Math.round(lost / step)) < 1e-6;
        return { at: y(start - lost), text: long ? figures.decimal(lost, places) : '', long };
      }),
      measured: y(start - dropK),
      drawn:
        foretoldDropK === undefined
          ? null
          : {
              from: y(start - foretoldDropK.low),
              to: y(start - foretoldDropK.high),
              at: y(start - foretoldDropK.value),
            },
    },
  };
}

type Point = readonly [number, number] | false;

const written = ([x, y]: readonly [number, number]) => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** A gap lifts the pencil. */
function pathOf(points: readonly Point[]): string {
  return points
    .flatMap((point, i) => (point === false ? [] : [`${points[i - 1] ? 'L' : 'M'}${written(point)}`]))
    .join('');
}

function bandOf(low: readonly Point[], high: readonly Point[]): FallDrawing['band'] {
  const around = [...high, ...low.toReversed()].filter((it) => it !== false);
  return around.length === 0
    ? null
    : { area: `M${around.map(written).join('L')}Z`, edges: [pathOf(high), pathOf(low)] };
}

/** Multiples of a step from the first at or above `from` to the last at or below `to`. */
function multiples(step: number, from: number, to: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  return Array.from(
    { length: Math.max(0, Math.floor(to / step + 1e-9) - first + 1) },
    (_, i) => (first + i) * step,
  );
}
