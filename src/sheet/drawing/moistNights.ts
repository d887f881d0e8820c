/** The water in the air of each room and outdoors, a point for the mean of each night. */
import type { NightCurve } from '../../curves.ts';
import { gramsOfWater } from '../../words/aboutHumidity.ts';
import { figures } from '../../words/index.ts';
import { html, type Markup } from '../html.ts';
import { places } from '../sheetWords.ts';
import { shortDate } from './clock.ts';
import { atBothWidths, px } from './widths.ts';

const TOP = 16; // [px]
const HEIGHT = 150; // [px]
const FOOT = 24; // [px], for the dates
const SCALE = 46; // [px], to the left
const NAMES = 0.2; // of the width, to the right, and at least
const LEAST_NAMES = 88; // [px]
const LETTER = 7; // [px], mean width of a letter
const APART = 16; // [px], between two names
const DATE = 70; // [px], that a date needs
/** Lines of more rooms could not be told from each other. */
const MOST_ROOMS = 6;

interface Line {
  readonly name: string;
  readonly kind: 'inside' | 'outside';
  /** [g/m³] of each night, null where it is not known. */
  readonly values: readonly (number | null)[];
}

/** Nothing without humidity inside. */
export function moistNightsDrawing(curves: readonly NightCurve[]): Markup | null {
  const nights = curves.filter(({ moist }) => moist !== undefined);
  const lines = linesOf(nights);
  if (!lines.some(({ kind }) => kind === 'inside')) return null;
  return html`<figure class="moist">${atBothWidths((width) => drawing(nights, lines, width))}</figure>`;
}

function linesOf(nights: readonly NightCurve[]): Line[] {
  const of = (kind: Line['kind']) => {
    const files = new Map(
      nights.flatMap(({ moist = [] }) =>
        moist.filter(({ place }) => place === kind).map((it) => [it.file, it.room]),
      ),
    );
    const lines = Array.from(
      files,
      ([file, room]): Line => ({
        name: kind === 'outside' ? places.outside : room,
        kind,
        values: nights.map(({ moist = [] }) => {
          const own = moist.find((it) => it.file === file);
          return own === undefined ? null : own.absoluteHumidity * 1000;
        }),
      }),
    );
    return lines.length > (kind === 'inside' ? MOST_ROOMS : 1) ? [meanLine(lines)] : lines;
  };
  return [...of('inside'), ...of('outside')];
}

function meanLine(lines: readonly Line[]): Line {
  const [{ kind, values }] = lines;
  return {
    name: kind === 'inside' ? 'all rooms' : places.outside,
    kind,
    values: values.map((_, i) => {
      const known = lines.flatMap((it) => it.values[i] ?? []);
      return known.length === 0 ? null : known.reduce((sum, it) => sum + it, 0) / known.length;
    }),
  };
}

function drawing(nights: readonly NightCurve[], lines: readonly Line[], width: number): Markup {
  const most = Math.max(
    1,
    Math.ceil(Math.max(...lines.flatMap(({ values }) => values.map((it) => it ?? 0)))),
  );
  const right = endOfLines(width);
  const times = nights.map(({ sunset }) => sunset);
  const span = Math.max(1, times[times.length - 1] - times[0]);
  const x = (i: number) => SCALE + 8 + ((times[i] - times[0]) / span) * (right - SCALE - 16);
  const y = (grams: number) => TOP + HEIGHT * (1 - grams / most);
  const step = most > 8 ? 4 : most > 4 ? 2 : 1;
  const ticks = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
  return html`<svg role="img" aria-label="${spoken(lines)}" viewBox="0 0 ${width} ${TOP + HEIGHT + FOOT}" width="${width}" height="${TOP + HEIGHT + FOOT}">${ticks.map(
    (tick) =>
      html`<line class="degree" x1="${SCALE}" x2="${px(right)}" y1="${px(y(tick))}" y2="${px(y(tick))}"/><text class="lesser" x="${SCALE - 6}" y="${px(y(tick) + 4)}" text-anchor="end">${tick}</text>`,
  )}<text class="lesser" x="0" y="10">g/m³</text>${lines.map((it) => line(it, x, y))}${namesOf(lines, y, width)}${dates(nights, x, right)}</svg>`;
}

const endOfLines = (width: number) => width - Math.max(LEAST_NAMES, width * NAMES);

/** Lifted where a night is missing; a night alone is a point. */
function line({ kind, values }: Line, x: (i: number) => number, y: (grams: number) => number): Markup {
  const d = values.map((value, i) => {
    if (value === null) return '';
    const lifted = (values[i - 1] ?? null) === null;
    return `${lifted ? 'M' : 'L'}${px(x(i))} ${px(y(value))}${lifted ? 'h.1' : ''}`;
  });
  return html`<path class="${kind}" d="${d.join('')}"/>`;
}

/** To the right of the last points, pushed apart until none covers another. */
function namesOf(lines: readonly Line[], y: (grams: number) => number, width: number): Markup[] {
  const left = endOfLines(width) + 4;
  const letters = Math.floor((width - left) / LETTER);
  let free = TOP;
  return lines
    .map(({ name, values }) => ({ name, at: y(values.findLast((it) => it !== null) ?? 0) }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ name, at }, i, all) => {
      // What is still to come needs its room above the foot.
      const lowest = TOP + HEIGHT - (all.length - 1 - i) * APART;
      const height = Math.min(Math.max(at + 4, free), lowest);
      free = height + APART;
      const shown = name.length > letters ? `${name.slice(0, letters - 1).trimEnd()}…` : name;
      return html`<text x="${px(left)}" y="${px(height)}">${shown}</text>`;
    });
}

function dates(nights: readonly NightCurve[], x: (i: number) => number, right: number): Markup[] {
  const every = Math.max(1, Math.ceil(nights.length / Math.max(1, (right - SCALE) / DATE)));
  return nights.flatMap(({ date }, i) =>
    i % every === 0
      ? [
          html`<line class="ruler-line" x1="${px(x(i))}" x2="${px(x(i))}" y1="${TOP + HEIGHT}" y2="${TOP + HEIGHT + 5}"/><text x="${px(x(i))}" y="${TOP + HEIGHT + 18}" text-anchor="middle">${shortDate(date)}</text>`,
        ]
      : [],
  );
}

const spoken = (lines: readonly Line[]): string =>
  `Water in the air, the mean of each night. ${lines
    .map(({ name, values }) => {
      const known = values.filter((it) => it !== null);
      const [first, last] = [known[0], known[known.length - 1]];
      return `${name}: ${figures.decimal(first, 1)} at first, ${gramsOfWater(last)} at last`;
    })
    .join('. ')}.`;
