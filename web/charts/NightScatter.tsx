/** The plainest picture of all: how fast each night cooled, against how much warmer it was inside than outside. */
import type { VNode } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { dashOf, type Mark, nightScatter, outlineOf, type Tick } from './nightScatter.ts';
import { PAPER_WIDTH } from './paper.ts';
import { useWidth } from './useWidth.ts';
import { walk } from './walk.ts';
import './NightScatter.css';

export interface NightScatterProps {
  readonly stages: readonly StageResult[];
  readonly href: (date: string) => string;
  /** The date of the night that is open. */
  readonly selected: string | undefined;
}

const WIDEST = 720; // [px]
const SIZE = 4.5; // [px], of a mark from its middle
const margins = { left: 44, right: 12, top: 24, bottom: 44 } as const; // [px]

export function NightScatter({ stages, href, selected }: NightScatterProps) {
  const frame = useRef<HTMLDivElement>(null);
  const { route } = useLocation();
  const width = Math.min(useWidth(frame, 640, PAPER_WIDTH), WIDEST);
  const box = useMemo(
    () => ({ ...margins, width, height: Math.round(Math.min(420, Math.max(280, width * 0.62))) }),
    [width],
  );
  const { marks, lines, ticks, beyond } = useMemo(() => nightScatter(stages, box), [stages, box]);
  const [right, base] = [box.width - box.right, box.height - box.bottom];
  const reached = marks.some(({ date }) => date === selected) ? selected : marks.at(-1)?.date;
  const open = (event: Event, date: string) => {
    event.preventDefault();
    route(href(date));
  };
  return (
    <figure class="night-scatter">
      <div ref={frame} class="night-scatter-layers">
        <svg width={box.width} height={box.height} aria-hidden="true">
          <Grid x={ticks.x} y={ticks.y} left={box.left} right={right} top={box.top} base={base} />
          <text x={box.left - 36} y={14}>
            cooling [K/h]
          </text>
          <text x={right} y={box.height - 6} text-anchor="end">
            warmer inside than outside [K]
          </text>
          {lines.map(({ stage, wedge }) => (
            <path key={stage} class="wedge" d={`M${wedge.map(({ x, y }) => `${x} ${y}`).join('L')}Z`} />
          ))}
          {lines.map(({ stage, line: [from, to] }) => (
            <line
              key={stage}
              class="slope"
              x1={from.x}
              y1={from.y}
              x2={to.x}
              y2={to.y}
              stroke-dasharray={dashOf(stage).join(' ')}
            />
          ))}
        </svg>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing has no fieldset */}
        <svg
          role="group"
          aria-label="Nights, by how much warmer it was inside than outside"
          width={box.width}
          height={box.height}
          onKeyDown={walk}
        >
          {marks.map((mark) => (
            <a
              key={mark.date}
              href={href(mark.date)}
              aria-label={mark.spoken}
              aria-current={mark.date === selected ? 'true' : undefined}
              tabIndex={mark.date === reached ? 0 : -1}
              onClick={(event) => open(event, mark.date)}
            >
              <title>{mark.spoken}</title>
              <NightMark mark={mark} />
            </a>
          ))}
        </svg>
      </div>
      <figcaption class="small lesser">
        Filled: nights that were used. Hollow with a cross: nights left out.
        {beyond > 0
          ? ` ${figures.count(beyond, 'night')} left out ${beyond === 1 ? 'lies' : 'lie'} outside of this picture; the table has ${beyond === 1 ? 'it' : 'them'}.`
          : ''}
      </figcaption>
    </figure>
  );
}

/** What a thumb hits is larger than what the eye sees. */
function NightMark({ mark }: { readonly mark: Mark }): VNode {
  const { x, y, used, stage } = mark;
  return (
    <>
      <circle class="hit" cx={x} cy={y} r={12} />
      <circle class="ring" cx={x} cy={y} r={9} />
      <path class={used ? 'mark' : 'mark hollow'} d={outlineOf(stage, mark, used ? SIZE : 1.3 * SIZE)} />
      {used ? null : <path class="cross" d={`M${x - 2.5} ${y - 2.5}l5 5m0 -5l-5 5`} />}
    </>
  );
}

interface GridProps {
  readonly x: readonly Tick[];
  readonly y: readonly Tick[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly base: number;
}

const Grid = ({ x, y, left, right, top, base }: GridProps) => (
  <g class="grid">
    {x.map(({ at, value, digits }) => (
      <g key={value}>
        <line x1={at} x2={at} y1={top} y2={base} />
        <text x={at} y={base + 17} text-anchor="middle">
          {figures.decimal(value, digits)}
        </text>
      </g>
    ))}
    {y.map(({ at, value, digits }) => (
      <g key={value}>
        <line x1={left} x2={right} y1={at} y2={at} />
        <text x={left - 6} y={at + 4} text-anchor="end">
          {figures.decimal(value, digits)}
        </text>
      </g>
    ))}
  </g>
);

/** A stage's mark and its line, for the legend. */
export const StageSample = ({ stage }: { readonly stage: number }) => (
  <svg class="night-scatter-sample" width={44} height={14} aria-hidden="true">
    <line class="slope" x1={0} x2={44} y1={7} y2={7} stroke-dasharray={dashOf(stage).join(' ')} />
    <path class="mark" d={outlineOf(stage, { x: 22, y: 7 }, SIZE)} />
  </svg>
);
