/** A cut through this house: each element as thick as the heat it loses by design, its name and share beside it. */
import type { DesignElement, Logger } from '../../house.ts';
import { figures } from '../../words/index.ts';
import { html, type Markup, named } from '../html.ts';
import type { DrawnElement } from './elementKind.ts';
import { type Point, type SectionDrawing, sectionDrawing } from './sectionDrawing.ts';
import { placeLoggers } from './sectionLoggers.ts';
import { atBothWidths, px } from './widths.ts';

interface Drawn {
  readonly elements: readonly DrawnElement[];
  readonly designed: readonly DesignElement[];
  /** The whole designed heat loss [W/K]. */
  readonly loss: number;
  readonly loggers: readonly Logger[];
}

export const section = (house: Drawn): Markup =>
  html`<figure class="section">${atBothWidths((width) => drawing(house, width))}</figure>`;

function drawing({ elements, designed, loss, loggers }: Drawn, width: number): Markup {
  const cut = sectionDrawing(elements, designed, loss, width);
  return html`<svg role="img" aria-label="A cut through the house as a diagram. ${spoken(elements, loss)}" viewBox="0 0 ${cut.width} ${cut.height}" width="${cut.width}" height="${cut.height}">${shell(cut)}${placeLoggers(
    loggers,
    cut,
  ).map(
    ({ at, label }) =>
      html`<circle class="logger" cx="${px(at.x)}" cy="${px(at.y)}" r="4"/>${label === '' ? null : html`<text class="logger-room" x="${px(at.x + 10)}" y="${px(at.y + 4)}">${label}</text>`}`,
  )}${cut.words.map((words) => beside(words, cut.lettered))}</svg>${cut.lettered ? names(cut) : null}`;
}

const shell = ({ coldRoof, ground, strips }: SectionDrawing): Markup =>
  html`${coldRoof.length > 0 ? html`<path class="cold-roof" d="${path(coldRoof)}"/>` : null}<line class="ground" x1="${px(ground.from)}" x2="${px(ground.to)}" y1="${px(ground.y)}" y2="${px(ground.y)}"/>${strips.map(({ kind, corners }) => html`<path class="strip strip-${kind}" d="${path(corners)}Z"/>`)}`;

function beside(
  { lines, share, at, side, leader: [from, to] }: SectionDrawing['words'][number],
  lettered: boolean,
) {
  const said = lettered ? lines : [...lines, share];
  return html`<line class="leader" x1="${px(from.x)}" y1="${px(from.y)}" x2="${px(to.x)}" y2="${px(to.y)}"/><circle class="leader-end" cx="${px(to.x)}" cy="${px(to.y)}" r="2"/>${said.map(
    (line, i) =>
      html`<text class="${i >= lines.length ? 'strong' : ''}" x="${px(at.x)}" y="${px(at.y + 15 * i)}" text-anchor="${side === 'left' ? 'end' : 'start'}">${line}</text>`,
  )}`;
}

const names = ({ words }: SectionDrawing): Markup =>
  html`<ul class="letters">${words
    .toSorted((a, b) => (a.lines[0] < b.lines[0] ? -1 : 1))
    .map(
      ({ name, lines, share }) => html`<li>${lines[0]} ${named(name)} <strong>${share}</strong></li>`,
    )}</ul>`;

const path = (points: readonly Point[]) =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');

const spoken = (elements: readonly DrawnElement[], loss: number) =>
  elements
    .map(({ name, heatLossWK }) =>
      heatLossWK === null
        ? `${name} not known`
        : `${name} ${figures.percent(heatLossWK / loss)} of the designed loss`,
    )
    .join(', ');
