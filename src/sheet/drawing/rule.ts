/** A quantity with its interval, as a pencil mark on a ruler: the same figure as on the pages, at a fixed width. */
import { html, type Markup } from '../html.ts';
import type { RuleMark } from './ruleMark.ts';
import { placeOn, type RuleScale, ruleScale } from './ruleScale.ts';
import { type RuleUnit, ruleUnits } from './ruleUnits.ts';
import { LINE, type MarkRow, markWords, placeWords } from './ruleWords.ts';
import { tied } from './tied.ts';
import { atBothWidths, px } from './widths.ts';

const BLEED = 14; // [px], that the ruler's body stands out at both ends
const ROW = 44; // [px], for each mark
const SMALL_ROW = 34;
/** More marks stand closer, and no more than this on one ruler. */
const FEW = 3;
const MOST = 14;

/** Nothing without marks; of many, several rulers. */
export const rules = (title: string, unit: RuleUnit, marks: readonly RuleMark[]): Markup[] => {
  const drawn = marks.filter(({ kind }) => kind === 'drawn');
  const others = marks.filter(({ kind }) => kind !== 'drawn');
  if (marks.length <= MOST) return marks.length === 0 ? [] : [figure(title, unit, marks)];
  const count = Math.ceil(others.length / (MOST - drawn.length));
  const each = Math.ceil(others.length / count);
  return Array.from({ length: count }, (_, i) =>
    figure(title, unit, [...others.slice(i * each, (i + 1) * each), ...drawn], marks),
  );
};

/** @param alike the marks that the ruler has room for: those of all rulers of a set */
const figure = (
  title: string,
  unit: RuleUnit,
  marks: readonly RuleMark[],
  alike: readonly RuleMark[] = marks,
) =>
  html`<figure class="rule">${atBothWidths((width) => drawing(title, unit, marks, scaleOf(alike), width))}</figure>`;

const scaleOf = (marks: readonly RuleMark[]) =>
  ruleScale(marks.flatMap(({ value, low = value, high = value }) => [value, low, high]));

function drawing(
  title: string,
  unit: RuleUnit,
  marks: readonly RuleMark[],
  scale: RuleScale,
  width: number,
): Markup {
  const span = width - 2 * BLEED;
  const words = marks.map((mark) => markWords(mark.label, tied(figureOf(unit, mark)), span));
  const row = (marks.length > FEW ? SMALL_ROW : ROW) + (words.some(({ over }) => over) ? LINE : 0);
  const edge = marks.length * row;
  const height = edge + (ruleUnits[unit].sign === '' ? 38 : 50);
  const places = placeWords(
    marks.map(({ kind, value, low = value, high = value }, i): MarkRow => {
      const [from, at, to] = [low, value, high].map((it) => placeOn(scale, it) * span);
      return { kind, low: from, at, high: to, length: words[i].length };
    }),
    span,
  );
  const y = (i: number) => (i + 1) * row - 10;
  return html`<svg role="img" aria-label="${spoken(title, unit, marks)}" viewBox="${-BLEED} 0 ${width} ${height}" width="${width}" height="${height}">${[
    marks.map((mark, i) => pencil(mark, scale, span, y(i), edge)),
    words.map(({ label, figure: written, over }, i) => {
      const x = px(places[i].x);
      const foot = y(i) - (marks[i].kind === 'drawn' ? 0 : 13);
      const below = over ? html` x="${x}" dy="${LINE}"` : null;
      return html`<text class="rule-words" x="${x}" y="${over ? foot - LINE : foot}" text-anchor="${places[i].anchor}">${label} <tspan class="strong"${below}>${written}</tspan></text>`;
    }),
    ruler(scale, span, edge, height, ruleUnits[unit].sign),
    marks.map(({ kind, value }) =>
      kind === 'drawn'
        ? html`<path class="rule-notch" transform="translate(${px(placeOn(scale, value) * span)} ${edge})" d="M-5.5 0L0 9L5.5 0"/>`
        : null,
    ),
  ]}</svg>`;
}

const figureOf = (unit: RuleUnit, { value, low, high }: RuleMark) =>
  low === undefined || high === undefined
    ? ruleUnits[unit].point(value)
    : ruleUnits[unit].between({ value, low, high });

const spoken = (title: string, unit: RuleUnit, marks: readonly RuleMark[]) =>
  `${title}. ${marks.map((mark) => `${mark.label}: ${figureOf(unit, mark)}`).join('; ')}.`;

/** The mark in its row and a fine line down to the ruler's edge; a drawn value is a broken line through all rows. */
function pencil(mark: RuleMark, scale: RuleScale, span: number, y: number, edge: number): Markup {
  const { value, low = value, high = value, kind } = mark;
  const [from, at, to] = [low, value, high].map((it) => px(placeOn(scale, it) * span));
  const fall = html`<line class="${kind === 'drawn' ? 'rule-drawn' : 'rule-fall'}" x1="${at}" x2="${at}" y1="${kind === 'drawn' ? 0 : y}" y2="${edge}"/>`;
  const interval =
    low < high ? html`<line class="rule-interval" x1="${from}" x2="${to}" y1="${y}" y2="${y}"/>` : null;
  if (kind === 'drawn') return fall;
  const stroke =
    kind === 'measured'
      ? html`<path class="rule-stroke" d="M-1.2 -8.5C0.6 -3 -0.6 3 1.4 8" transform="translate(${at} ${y})"/>`
      : html`<rect class="rule-hollow" x="-2.5" y="-7.5" width="5" height="15" transform="translate(${at} ${y})"/>`;
  return html`${fall}${interval}${stroke}`;
}

function ruler(scale: RuleScale, span: number, edge: number, height: number, sign: string): Markup {
  const depth = { long: 13, middle: 9, short: 6 } as const;
  const roomy = span > 480;
  return html`<rect class="ruler-body" x="${-BLEED}" y="${edge}" width="${span + 2 * BLEED}" height="${height - edge}"/><line class="ruler-edge" x1="0" x2="${span}" y1="${edge}" y2="${edge}"/>${scale.graduations.map(
    ({ at, length, text, always }) => {
      const x = px(at * span);
      const line = html`<line class="ruler-line" x1="${x}" x2="${x}" y1="${edge}" y2="${edge + depth[length]}"/>`;
      return text === '' || !(roomy || always)
        ? line
        : html`${line}<text x="${x}" y="${edge + 28}" text-anchor="middle">${text}</text>`;
    },
  )}${sign === '' ? null : html`<text class="lesser" x="0" y="${edge + 44}">${sign}</text>`}`;
}
