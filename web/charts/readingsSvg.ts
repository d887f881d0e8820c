/** What the charts of the readings show as an SVG on paper: a file that stands by itself and can be drawn on further. */
import { figures } from '../../src/words/index.ts';
import { doubtedMarks, heatedSpans } from './readingsFacts.ts';
import type { Family, Line } from './readingsSeries.ts';
import { type Shown, spanWords } from './takeReadings.ts';
import { timeTicks } from './timeTicks.ts';

const WIDTH = 1000; // [px]
const LEFT = 56;
const RIGHT = 20;
const HEAD = 66; // over each plot: its name and its lines
const FOOT = 40; // under each plot: its times
const TOP = 46; // the span, and the names of the stages
const inks = { ember: '#7d2a0a', frost: '#4387b1', graphite: '#20242a' } as const;
const chalk = '#d8d2c6';

interface Plot {
  readonly family: Family;
  readonly top: number;
  readonly height: number;
  readonly x: (instant: number) => number;
  readonly y: (value: number) => number;
  readonly ticks: readonly number[];
  readonly digits: number;
}

/** @param name of the house, for the title of the file */
export function readingsSvg(shown: Shown, name: string): string {
  const plots = plotsOf(shown);
  const last = plots.at(-1);
  const height = last === undefined ? TOP : last.top + last.height + FOOT;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" font-family="system-ui, sans-serif" font-size="12" fill="${inks.graphite}">`,
    `<title>${escaped(name)}</title>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
    '<defs><pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">',
    `<path d="M0 0V5" stroke="${inks.ember}" stroke-width="2"/></pattern></defs>`,
    `<text x="${LEFT}" y="20" font-size="14">${escaped(`${name}, ${spanWords(shown)}`)}</text>`,
    ...plots.map((plot, i) => plotSvg(shown, plot, i === 0)),
    '</svg>\n',
  ].join('\n');
}

function plotsOf({ families, readings, view }: Shown): Plot[] {
  const x = (instant: number) =>
    LEFT + ((instant - view.from) / (view.to - view.from)) * (WIDTH - LEFT - RIGHT);
  let next = TOP;
  return families.map((family) => {
    const values = family.lines.flatMap(({ channel }) => {
      const { min, max } = readings.channels[channel];
      return readings.time.flatMap((at, i) =>
        at < view.from || at > view.to ? [] : [min[i], max[i]].filter((it) => it !== null),
      );
    });
    const height = family.quantity === 'temperature' ? 280 : 170;
    const top = next + HEAD;
    next = top + height + FOOT;
    const { low, high, ticks, digits } = scaleOf(values);
    const y = (value: number) => top + height - ((value - low) / (high - low)) * height;
    return { family, top, height, x, y, ticks, digits };
  });
}

/** Round figures from below the least value to above the greatest. */
function scaleOf(values: readonly number[]) {
  const [least, most] = values.length === 0 ? [0, 1] : [minimum(values), maximum(values)];
  const span = Math.max(most - least, 0.5);
  const size = 10 ** Math.floor(Math.log10(span));
  const step = [0.2, 0.5, 1, 2].map((n) => n * size).find((it) => span / it <= 6) ?? 2 * size;
  const [first, last] = [
    Math.floor(least / step),
    Math.max(Math.ceil(most / step), Math.floor(least / step) + 1),
  ];
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return {
    low: first * step,
    high: last * step,
    ticks,
    digits: Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)),
  };
}

const minimum = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));
const maximum = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b));

/** @param numbered the notes have their numbers, as in the first plot on the page */
function plotSvg(shown: Shown, plot: Plot, numbered: boolean): string {
  const { family, top, height, x, y, ticks, digits } = plot;
  const { readings, view, timeZone } = shown;
  const base = top + height;
  const cut = (at: number) => Math.min(Math.max(x(at), LEFT), WIDTH - RIGHT).toFixed(1);
  const band = (from: number, to: number, y: number, tall: number, look: string) =>
    to <= view.from || from >= view.to
      ? ''
      : `<rect x="${cut(from)}" y="${y}" width="${(Number(cut(to)) - Number(cut(from))).toFixed(1)}" height="${tall}" ${look}/>`;
  return [
    `<text x="${LEFT}" y="${top - 46}" font-weight="600" font-size="14">${escaped(`${family.title} [${family.unit}]`)}</text>`,
    ...family.lines.map((line, i) => legendSvg(line, LEFT + i * 150, top - 26)),
    ...readings.nights.map(({ sunset, sunrise, used }) =>
      band(
        sunset,
        sunrise,
        top,
        height,
        used ? 'fill="#1d2b45" fill-opacity="0.094"' : `fill="none" stroke="${chalk}"`,
      ),
    ),
    ...ticks.map(
      (value) =>
        `<path d="M${LEFT} ${y(value).toFixed(1)}H${WIDTH - RIGHT}" stroke="${chalk}"/><text x="${LEFT - 6}" y="${(y(value) + 4).toFixed(1)}" text-anchor="end">${figures.decimal(value, digits)}</text>`,
    ),
    ...timeTicks(view.from, view.to, WIDTH - LEFT - RIGHT, timeZone).map(({ at, label }) =>
      label
        .split('\n')
        .map(
          (words, i) => `<text x="${cut(at)}" y="${base + 16 + 14 * i}" text-anchor="middle">${words}</text>`,
        )
        .join(''),
    ),
    ...(family.quantity === 'temperature'
      ? heatedSpans(readings).map(({ from, to }) => band(from, to, base - 8, 8, 'fill="url(#hatch)"'))
      : []),
    ...readings.stages
      .filter(({ from, to }) => to > view.from && from < view.to)
      .map(
        ({ name, from, to }) =>
          `<path d="M${cut(from)} ${base}V${top - 8}H${cut(to)}V${base}" fill="none" stroke="${inks.graphite}" stroke-width="0.75"/><text x="${((Number(cut(from)) + Number(cut(to))) / 2).toFixed(1)}" y="${top - 11}" text-anchor="middle">${escaped(name)}</text>`,
      ),
    ...family.lines.map((line) => lineSvg(shown, plot, line)),
    ...family.lines.flatMap((line) => keptOutSvg(shown, plot, line)),
    ...readings.notes.flatMap(({ at, text }, i) =>
      at >= view.from && at <= view.to
        ? [
            `<path d="M${cut(at)} ${top}V${base}" stroke="${inks.graphite}" stroke-dasharray="1 3"><title>${escaped(text)}</title></path>`,
            ...(numbered ? [noteNumber(i + 1, cut(at), top + 10)] : []),
          ]
        : [],
    ),
  ].join('\n');
}

const noteNumber = (n: number, x: string, y: number) =>
  `<circle cx="${x}" cy="${y}" r="8" fill="#ffffff" stroke="${inks.graphite}"/><text x="${x}" y="${y + 4}" text-anchor="middle" font-size="11">${n}</text>`;

const legendSvg = ({ label, ink, dash }: Line, x: number, y: number) =>
  `<path d="M${x} ${y - 4}h36" stroke="${inks[ink]}" stroke-width="2" stroke-dasharray="${dash.join(' ')}"/><text x="${x + 42}" y="${y}">${escaped(label)}</text>`;

/** The lines through the greatest and the least values with the band between, in pieces where there are gaps. */
function lineSvg({ readings, view }: Shown, { x, y }: Plot, { channel, ink, dash }: Line): string {
  const { min, max } = readings.channels[channel];
  const pieces: { top: string[]; foot: string[] }[] = [];
  let open = false;
  for (const [i, at] of readings.time.entries()) {
    const [low, high] = [min[i], max[i]];
    const there = at >= view.from && at <= view.to && low !== null && high !== null;
    if (there) {
      if (!open) pieces.push({ top: [], foot: [] });
      pieces.at(-1)?.top.push(`${x(at).toFixed(1)} ${y(high).toFixed(1)}`);
      pieces.at(-1)?.foot.unshift(`${x(at).toFixed(1)} ${y(low).toFixed(1)}`);
    }
    open = there;
  }
  return pieces
    .map(
      ({ top, foot }) =>
        `<path d="M${[...top, ...foot].join('L')}Z" fill="${inks[ink]}" fill-opacity="0.22"/><path d="M${top.join('L')}M${foot.join('L')}" fill="none" stroke="${inks[ink]}" stroke-width="1.25" stroke-dasharray="${dash.join(' ')}"/>`,
    )
    .join('');
}

/** Readings that are kept out are hollow. */
const keptOutSvg = ({ readings, view }: Shown, { x, y }: Plot, { channel, ink }: Line): string[] =>
  doubtedMarks(readings.channels[channel], readings)
    .filter(({ at }) => at >= view.from && at <= view.to)
    .map(
      ({ at, value }) =>
        `<circle cx="${x(at).toFixed(1)}" cy="${y(value).toFixed(1)}" r="3.5" fill="#ffffff" stroke="${inks[ink]}"/>`,
    );

/** Names come from people: nothing of them is markup. */
const escaped = (text: string) =>
  text.replace(/[&<>"']/g, (it) => `&#${it.charCodeAt(0)};`).replace(/\p{Cc}/gu, ' ');
