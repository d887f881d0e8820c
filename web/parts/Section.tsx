/** A cut through this house: each element as thick as the heat it loses by design, its name and share beside it. */

import { useRef } from 'preact/hooks';
import type { DesignElement, Logger } from '../../src/house.ts';
import type { DrawnElement } from '../../src/sheet/drawing/elementKind.ts';
import { type Point, type SectionDrawing, sectionDrawing } from '../../src/sheet/drawing/sectionDrawing.ts';
import { type LoggerMark, placeLoggers } from '../../src/sheet/drawing/sectionLoggers.ts';
import { figures } from '../../src/words/index.ts';
import { PAPER_WIDTH } from '../charts/paper.ts';
import { useWidth } from '../charts/useWidth.ts';
import './Section.css';

export interface SectionProps {
  readonly elements: readonly DrawnElement[];
  readonly designed: readonly DesignElement[];
  /** The whole designed heat loss [W/K]. */
  readonly loss: number;
  readonly loggers: readonly Logger[];
  /** The element that is picked, by name, where they can be picked. */
  readonly chosen?: string;
  /** For the mouse; whoever has no mouse needs a list beside it. */
  readonly onPick?: (name: string) => void;
}

export function Section({ elements, designed, loss, loggers, chosen, onPick }: SectionProps) {
  const frame = useRef<HTMLElement>(null);
  const width = Math.min(720, useWidth(frame, 640, PAPER_WIDTH));
  const drawing = sectionDrawing(elements, designed, loss, width);
  return (
    <figure ref={frame} class="section">
      <svg
        role="img"
        aria-label={`A cut through the house as a diagram. ${spoken(elements, loss)}`}
        viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      >
        <Cut drawing={drawing} chosen={chosen} onPick={onPick} />
        <Loggers marks={placeLoggers(loggers, drawing)} />
        {drawing.words.map(({ name, lines, share, at, side, leader: [from, to] }) => (
          <g key={name}>
            <line class="section-leader" x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
            <circle class="section-dot" cx={to.x} cy={to.y} r="2" />
            <text y={at.y} text-anchor={side === 'left' ? 'end' : 'start'}>
              {lines.map((line, i) => (
                <tspan key={line} x={at.x} dy={i === 0 ? 0 : 15}>
                  {line}
                </tspan>
              ))}
              {drawing.lettered ? null : (
                <tspan x={at.x} dy={15} class="section-share">
                  {share}
                </tspan>
              )}
            </text>
          </g>
        ))}
      </svg>
      {drawing.lettered ? (
        <ul class="section-names small">
          {drawing.words
            .toSorted((a, b) => a.lines[0].localeCompare(b.lines[0]))
            .map(({ name, lines, share }) => (
              <li key={name}>
                <span>{lines[0]}</span> {name} <strong class="figure">{share}</strong>
              </li>
            ))}
        </ul>
      ) : null}
      <figcaption class="small lesser">
        A diagram, not a drawing to scale: an element’s lines together are as thick as the heat that it loses
        by design; lengths follow the areas. {loggers.length > 0 ? 'Small circles are loggers. ' : ''}Shares
        are of the whole designed loss, bridges and ventilation included.
      </figcaption>
    </figure>
  );
}

const path = (points: readonly Point[]) =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

const spoken = (elements: readonly DrawnElement[], loss: number) =>
  elements
    .map(({ name, heatLossWK }) =>
      heatLossWK === null
        ? `${name} not known`
        : `${name} ${figures.percent(heatLossWK / loss)} of the designed loss`,
    )
    .join(', ');

type CutProps = { readonly drawing: SectionDrawing } & {
  readonly [K in 'chosen' | 'onPick']: SectionProps[K] | undefined;
};

const Cut = ({ drawing: { coldRoof, ground, strips }, chosen, onPick }: CutProps) => (
  <>
    {coldRoof.length > 0 ? <path d={path(coldRoof)} class="section-cold" /> : null}
    <line x1={ground.from} x2={ground.to} y1={ground.y} y2={ground.y} class="section-ground" />
    {strips.map(({ name, kind, corners }, i) => (
      // biome-ignore lint/a11y/noStaticElementInteractions: the list beside the drawing has buttons for the keyboard
      <path
        key={`${name} ${i}`}
        d={`${path(corners)}Z`}
        class={`section-strip section-${kind}${name === chosen ? ' section-chosen' : ''}${onPick ? ' section-pick' : ''}`}
        onClick={() => onPick?.(name)}
      />
    ))}
  </>
);

const Loggers = ({ marks }: { marks: readonly LoggerMark[] }) => (
  <>
    {marks.map(({ at, label }, i) => (
      <g key={i}>
        <circle class="section-logger" cx={at.x} cy={at.y} r="4" />
        {label === '' ? null : (
          <text class="section-room" x={at.x + 10} y={at.y + 4}>
            {label}
          </text>
        )}
      </g>
    ))}
  </>
);
