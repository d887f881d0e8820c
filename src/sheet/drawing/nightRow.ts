/** The last nights side by side, as many as the sheet has room for, all on one scale of temperature and of time. */
import type { NightResult } from '../../assessment.ts';
import type { NightCurve } from '../../curves.ts';
import { figures } from '../../words/index.ts';
import { html, type Markup } from '../html.ts';
import { paragraph } from '../pieces.ts';
import { rowOfNights } from '../sheetWords.ts';
import { shortDate } from './clock.ts';
import {
  type Band,
  bandPitch,
  heightOf,
  LINE,
  nightBand,
  type Point,
  pixelsPerHour,
  type RowScale,
  rowScale,
} from './nightBands.ts';
import { atBothWidths, px } from './widths.ts';

const HEIGHT = 114; // [px], of a band
const DATES = 20; // [px], under the bands
const MARKS = 15; // [px], under the dates
const SCALE = 46; // [px], to their left
const DAY = 4; // [px], between two nights
const WIDEST = 104; // [px]
const NARROWEST = 76;

const pitchOf = (width: number, nights: number) => bandPitch(width - SCALE, nights, NARROWEST, WIDEST);

/** @param curves in their order, at least one */
export const nightRow = (curves: readonly NightCurve[], nights: readonly NightResult[]): Markup =>
  html`<figure class="nights">${atBothWidths((width) => drawing(curves, nights, width))}</figure>`;

function drawing(all: readonly NightCurve[], nights: readonly NightResult[], width: number): Markup {
  const pitch = pitchOf(width, all.length);
  const curves = all.slice(-Math.floor((width - SCALE) / pitch + 1e-9));
  const scale = rowScale(curves, HEIGHT);
  const perHour = pixelsPerHour(curves, pitch - DAY);
  const resultOf = new Map(nights.map((night) => [night.date, night]));
  const bands = curves.map((curve) => nightBand(curve, resultOf.get(curve.date), scale, perHour));
  const label = bands.map(({ spoken }) => spoken).join('. ');
  const used = SCALE + bands.length * pitch;
  const height = HEIGHT + DATES + (bands.some(({ heated }) => heated) ? MARKS : 0);
  return html`<svg role="img" aria-label="${label}" viewBox="0 0 ${px(used)} ${height}" width="${px(used)}" height="${height}">${scale.ticks.map(
    (tick) =>
      html`<text class="lesser" x="${SCALE - 6}" y="${px(heightOf(scale, tick) + 4)}" text-anchor="end">${figures.decimal(tick, 0)}${tick === scale.ticks.at(-1) ? ' °C' : ''}</text><line class="degree" x1="${SCALE}" x2="${px(used)}" y1="${px(heightOf(scale, tick))}" y2="${px(heightOf(scale, tick))}"/>`,
  )}${bands.map((band, i) => drawn(band, scale, SCALE + i * pitch, pitch))}</svg>${paragraph(
    rowOfNights(
      bands.length,
      all.length,
      bands.some(({ hollow }) => hollow),
    ),
    'small lesser',
  )}`;
}

const drawn = (band: Band, scale: RowScale, left: number, pitch: number): Markup =>
  html`<g transform="translate(${px(left + (pitch - band.width) / 2)} 0)"><rect class="${band.hollow ? 'band-hollow' : 'band'}" x="0.5" y="0.5" width="${px(Math.max(1, band.width - 1))}" height="${scale.height - 1}"/>${lines('outside', band.outside)}${lines('inside', band.inside)}${lines('fall', band.fall)}${band.drop && drop(band.drop, band.width, scale.height)}${band.reason && reason(band.reason)}<text x="${px(band.width / 2)}" y="${scale.height + 15}" text-anchor="middle">${shortDate(band.date)}</text>${band.heated ? html`<text class="lesser" x="${px(band.width / 2)}" y="${scale.height + 30}" text-anchor="middle">heated</text>` : null}</g>`;

const reason = ({ lines, at }: NonNullable<Band['reason']>): Markup[] =>
  lines.map(
    (line, i) =>
      html`<text class="band-words" x="${px(at.x)}" y="${px(at.y + i * LINE)}" text-anchor="middle">${line}</text>`,
  );

const drop = ({ text, at }: NonNullable<Band['drop']>, width: number, height: number): Markup =>
  html`<circle class="fall-end" cx="${px(at.x)}" cy="${px(at.y)}" r="2.5"/><text class="band-words strong" x="${px(width - 5)}" y="${px(Math.min(at.y + 17, height - 5))}" text-anchor="end">${text}</text>`;

const lines = (name: string, pieces: readonly (readonly Point[])[]): Markup | null =>
  pieces.length === 0
    ? null
    : html`<path class="${name}" d="${pieces.map((piece) => `M${piece.map(({ x, y }) => `${px(x)} ${px(y)}`).join('L')}`).join('')}"/>`;
