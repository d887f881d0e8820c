/** One night wide: inside and its fit, outside, between which hours the fall was fitted. */
import type { NightResult } from '../../assessment.ts';
import type { NightCurve } from '../../curves.ts';
import { figures } from '../../words/index.ts';
import { html, type Markup } from '../html.ts';
import { signedKelvins, spokenNight } from './chartWords.ts';
import { clock } from './clock.ts';
import { heightOf, type RowScale, rowScale } from './nightBands.ts';
import { atBothWidths, px } from './widths.ts';

const TOP = 22; // [px], for sunset and sunrise
const HEIGHT = 220; // [px]
const FOOT = 44; // [px], for the hours and the lines' names
const SCALE = 46; // [px]
const HOUR = 3600; // [s]

export const oneNight = (curve: NightCurve, night: NightResult | undefined, timeZone: string): Markup =>
  html`<figure class="night">${atBothWidths((width) => drawing(curve, night, timeZone, width))}</figure>`;

function drawing(curve: NightCurve, night: NightResult | undefined, timeZone: string, width: number): Markup {
  const { time, sunset, sunrise, window } = curve;
  const scale = rowScale([curve], HEIGHT);
  const [first, last] = [time[0] ?? sunset, time.at(-1) ?? sunrise];
  const x = (instant: number) =>
    SCALE + ((instant - first) / Math.max(1, last - first)) * (width - SCALE - 1);
  const [dusk, dawn] = [x(Math.max(first, sunset)), x(Math.min(last, sunrise))];
  const place = { x, scale, time };
  return html`<svg role="img" aria-label="${spokenNight(curve.date, night)}" viewBox="0 0 ${width} ${TOP + HEIGHT + FOOT}" width="${width}" height="${TOP + HEIGHT + FOOT}"><text x="${px(dusk)}" y="14">sunset ${clock(sunset, timeZone)}</text><text x="${px(dawn)}" y="14" text-anchor="end">sunrise ${clock(sunrise, timeZone)}</text><g transform="translate(0 ${TOP})"><rect class="band" x="${px(dusk)}" y="0.5" width="${px(Math.max(1, dawn - dusk))}" height="${HEIGHT - 1}"/>${window && html`<rect class="fitted-hours" x="${px(x(window.from))}" y="1" width="${px(x(window.to) - x(window.from))}" height="${HEIGHT - 2}"/>`}${degrees(scale, width)}${line('outside', curve.outside, place)}${line('inside', curve.inside, place)}${line('fitted', curve.fitted, place)}${window && bracket(window, x, between(curve, scale), timeZone, night)}${hours(first, last, x, width, timeZone)}</g>${key(width)}</svg>`;
}

const degrees = (scale: RowScale, width: number) =>
  scale.ticks.map(
    (tick) =>
      html`<line class="degree" x1="${SCALE}" x2="${width}" y1="${px(heightOf(scale, tick))}" y2="${px(heightOf(scale, tick))}"/><text class="lesser" x="${SCALE - 6}" y="${px(heightOf(scale, tick) + 4)}" text-anchor="end">${figures.decimal(tick, 0)}${tick === scale.ticks.at(-1) ? ' °C' : ''}</text>`,
  );

interface Place {
  readonly x: (instant: number) => number;
  readonly scale: RowScale;
  readonly time: readonly number[];
}

/** The line is lifted where a reading is missing. */
function line(name: string, values: readonly (number | null)[], { x, scale, time }: Place): Markup {
  let down = false;
  const d = values.map((value, i) => {
    const lifted = !down;
    down = value !== null;
    return value === null ? '' : `${lifted ? 'M' : 'L'}${px(x(time[i]))} ${px(heightOf(scale, value))}`;
  });
  return html`<path class="${name}" d="${d.join('')}"/>`;
}

/** The height half-way between the two curves, where the words cross neither. */
function between({ inside, outside }: NightCurve, scale: RowScale): number {
  const there = (values: readonly (number | null)[]) => values.filter((it) => it !== null);
  const [lowest, highest] = [Math.min(...there(inside)), Math.max(...there(outside))];
  const y = heightOf(scale, (lowest + highest) / 2);
  return Number.isFinite(y) ? Math.round(y) : HEIGHT - 14;
}

function bracket(
  { from, to }: NonNullable<NightCurve['window']>,
  x: (instant: number) => number,
  y: number,
  timeZone: string,
  night: NightResult | undefined,
): Markup {
  const [left, right] = [x(from), x(to)];
  const drop = typeof night?.dropK === 'number' ? `, ${signedKelvins(-night.dropK)}` : '';
  return html`<path class="bracket" d="M${px(left)} ${y}H${px(right)}M${px(left)} ${y - 5}v10M${px(right)} ${y - 5}v10"/><text class="band-words" x="${px((left + right) / 2)}" y="${y - 6}" text-anchor="middle">fitted ${clock(from, timeZone)} to ${clock(to, timeZone)}${drop}</text>`;
}

/** Every second or third hour, as the width allows. */
function hours(first: number, last: number, x: (instant: number) => number, width: number, timeZone: string) {
  const every = HOUR * Math.max(2, Math.ceil((last - first) / HOUR / ((width - SCALE) / 56)));
  const from = Math.ceil(first / every) * every;
  const count = Math.max(0, Math.floor((last - from) / every) + 1);
  return Array.from({ length: count }, (_, i) => from + i * every)
    .filter((it) => x(it) < width - 18)
    .map(
      (it) =>
        html`<line class="ruler-line" x1="${px(x(it))}" x2="${px(x(it))}" y1="${HEIGHT}" y2="${HEIGHT + 5}"/><text x="${px(x(it))}" y="${HEIGHT + 18}" text-anchor="middle">${clock(it, timeZone)}</text>`,
    );
}

const key = (width: number) =>
  (['inside', 'fitted', 'outside'] as const).map((name, i) => {
    const left = SCALE + i * Math.min(150, (width - SCALE) / 3);
    const y = TOP + HEIGHT + 36;
    return html`<path class="${name}" d="M${px(left)} ${y - 4}h28"/><text x="${px(left + 34)}" y="${y}">${name}</text>`;
  });
