/** The night row in figures: one temperature scale and one time scale for all bands, and what stands in each. */
import type { NightResult } from '../../assessment.ts';
import type { NightCurve } from '../../curves.ts';
import { shortReason, signedKelvins, spokenNight, wrapped } from './chartWords.ts';

/** From temperatures [°C] to heights [px] from the top. */
export interface RowScale {
  readonly low: number;
  readonly high: number;
  readonly height: number;
  readonly ticks: readonly number[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** One night as it is drawn; lengths in px, from the upper left corner of its band. */
export interface Band {
  readonly date: string;
  readonly spoken: string;
  readonly width: number;
  /** Left out of the time constant: drawn hollow, with `reason` on it. */
  readonly hollow: boolean;
  readonly heated: boolean;
  /** Pieces between gaps. */
  readonly inside: readonly (readonly Point[])[];
  readonly outside: readonly (readonly Point[])[];
  /** The part of the inside line that was fitted. */
  readonly fall: readonly (readonly Point[])[];
  /** The drop over the fitted part, at its end. */
  readonly drop: { readonly text: string; readonly at: Point } | null;
  readonly reason: { readonly lines: readonly string[]; readonly at: Point } | null;
}

export const LINE = 13; // [px], of the reason's text
const LETTER = 6.8; // [px], mean width of a letter of it
const NARROWEST = 2; // [px], of a band: in the north a summer night has no hour
const EDGE = 5; // [px], free on either side of it
const BASELINE = 10; // [px], from the top of a line

/** The scale that holds every reading of the row, with whole degrees at its ends. */
export function rowScale(curves: readonly NightCurve[], height: number): RowScale {
  const values = curves.flatMap(({ inside, outside }) => [...inside, ...outside]).filter((it) => it !== null);
  const [least, most] = values.reduce(
    ([low, high], it) => [Math.min(low, it), Math.max(high, it)],
    [Infinity, -Infinity],
  );
  const [low, high] = values.length === 0 ? [0, 20] : [Math.floor(least) - 1, Math.ceil(most) + 1];
  const step = high - low > 32 ? 10 : 5;
  const first = Math.ceil(low / step);
  const ticks = Array.from({ length: Math.floor(high / step) - first + 1 }, (_, i) => (first + i) * step);
  return { low, high, height, ticks };
}

export const heightOf = ({ low, high, height }: RowScale, temperature: number) =>
  ((high - temperature) / (high - low)) * height;

/** The width [px] of a night's hour, so that the longest night is as wide as a band may be. */
export const pixelsPerHour = (curves: readonly NightCurve[], widest: number) =>
  widest / Math.max(1, ...curves.map(({ sunset, sunrise }) => (sunrise - sunset) / 3600));

/**
 * As wide as lets a whole number of bands fit, so that the row starts and ends at one; never narrower than words
 * need, also in a row that is not laid out yet.
 * @returns the distance from one band to the next [px]
 */
export function bandPitch(rowWidth: number, nights: number, narrowest = 64, widest = 104): number {
  const fitting = Math.max(1, Math.floor(rowWidth / narrowest));
  return Math.min(widest, Math.max(narrowest, rowWidth / Math.min(fitting, Math.max(1, nights))));
}

/** What stands in the band of one night; `night` is undefined when it belongs to no stage. */
export function nightBand(
  curve: NightCurve,
  night: NightResult | undefined,
  scale: RowScale,
  perHour: number,
): Band {
  const width = Math.max(NARROWEST, ((curve.sunrise - curve.sunset) / 3600) * perHour);
  const place = (time: number, value: number): Point => ({
    x: ((time - curve.sunset) / 3600) * perHour,
    y: heightOf(scale, value),
  });
  const line = (values: readonly (number | null)[], from: number, to: number) =>
    pieces(curve.time, values, from, to).map((piece) =>
      onePerPixel(piece.map(([time, value]) => place(time, value))),
    );
  const { sunset, sunrise, window } = curve;
  const inside = line(curve.inside, sunset, sunrise);
  const outside = line(curve.outside, sunset, sunrise);
  const fall = window === null ? [] : line(curve.inside, window.from, window.to);
  const hollow = night === undefined || !night.used;
  const end = fall.at(-1)?.at(-1);
  return {
    date: curve.date,
    spoken: spokenNight(curve.date, night),
    width,
    hollow,
    heated: night?.heated ?? false,
    inside,
    outside,
    fall,
    drop:
      hollow || end === undefined || night.dropK === null
        ? null
        : { text: signedKelvins(-night.dropK), at: end },
    reason: hollow ? placed(shortReason(night), width, scale.height, inside, outside) : null,
  };
}

/** The readings between two instants, cut where one is missing. */
function pieces(
  time: readonly number[],
  values: readonly (number | null)[],
  from: number,
  to: number,
): [number, number][][] {
  const all: [number, number][][] = [[]];
  for (const [i, value] of values.entries()) {
    if (time[i] < from || time[i] > to) continue;
    if (value === null) all.push([]);
    else all[all.length - 1].push([time[i], value]);
  }
  return all.filter((piece) => piece.length > 0);
}

/** More points than pixels are not seen; the ends stay. */
function onePerPixel(points: readonly Point[]): Point[] {
  let last = -Infinity;
  return points.filter(({ x }, i) => {
    if (x - last < 1 && i < points.length - 1) return false;
    last = x;
    return true;
  });
}

/** The reason in the widest empty strip of the band: over the lines, between them, or under them. */
function placed(
  text: string,
  width: number,
  height: number,
  ...lines: readonly (readonly (readonly Point[])[])[]
): { lines: string[]; at: Point } {
  const words = wrapped(text, Math.max(6, Math.floor((width - 2 * EDGE) / LETTER)));
  const spans = lines
    .map((pieces) => pieces.flat().map(({ y }) => y))
    .filter((ys) => ys.length > 0)
    .map((ys) => ({ top: Math.min(...ys), bottom: Math.max(...ys) }))
    .toSorted((a, b) => a.top - b.top);
  const edges = [0, ...spans.flatMap(({ top, bottom }) => [top, bottom]), height];
  const free = Array.from({ length: spans.length + 1 }, (_, i) => [edges[2 * i], edges[2 * i + 1]]);
  const [top, bottom] = free.reduce((best, it) => (it[1] - it[0] > best[1] - best[0] ? it : best));
  const block = words.length * LINE;
  const y = Math.min(Math.max((top + bottom - block) / 2, 2), height - block - 2);
  return { lines: words, at: { x: width / 2, y: y + BASELINE } };
}
