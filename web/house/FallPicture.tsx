/** How one night went: the warmth inside falling in its dark band, beside it what the drawing would have done. */
import { useId, useRef } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { PAPER_WIDTH } from '../charts/paper.ts';
import { useWidth } from '../charts/useWidth.ts';
import { FALL_HEIGHT, type FallDrawing, fallDrawing } from './fallDrawing.ts';
import './fall.css';

const ASSUMED_WIDTH = 640; // [px]

interface FallPictureProps {
  readonly curve: NightCurve;
  readonly night: NightResult;
  readonly timeZone: string;
  /** What it shows, for those who hear it. */
  readonly spoken: string;
}

export function FallPicture({ curve, night, timeZone, spoken }: FallPictureProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, ASSUMED_WIDTH, PAPER_WIDTH);
  const hatch = useId();
  const drawing = fallDrawing(curve, night, width, timeZone);
  return (
    <div ref={frame} class="fall">
      {drawing === null ? null : (
        <svg role="img" aria-label={spoken} width={width} height={FALL_HEIGHT}>
          <defs>
            <Hatch id={hatch} />
            <clipPath id={`${hatch}-box`}>
              <rect
                x={drawing.box.left}
                y={drawing.box.top}
                width={drawing.box.right - drawing.box.left}
                height={drawing.box.bottom - drawing.box.top}
              />
            </clipPath>
          </defs>
          <Night drawing={drawing} hatch={hatch} />
          <Axes drawing={drawing} />
          <Ruler drawing={drawing} />
        </svg>
      )}
    </div>
  );
}

export const Hatch = ({ id }: { id: string }) => (
  <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
    <line x1="0" x2="0" y1="0" y2="7" class="fall-hatch" />
  </pattern>
);

function Night({ drawing, hatch }: { drawing: FallDrawing; hatch: string }) {
  const { box, night, band, inside, fitted } = drawing;
  const height = box.bottom - box.top;
  return (
    <g>
      <rect x={night.left} y={box.top} width={night.right - night.left} height={height} class="fall-night" />
      {drawing.degrees.map(({ at }) => (
        <line key={at} x1={box.left} x2={box.right} y1={at} y2={at} class="fall-degree" />
      ))}
      {band === null ? null : (
        <>
          <path d={band.area} fill={`url(#${hatch})`} />
          {band.edges.map((edge) => (
            <path key={edge} d={edge} class="fall-edge" />
          ))}
        </>
      )}
      <path d={inside} class="fall-inside" clip-path={`url(#${hatch}-box)`} />
      <path d={fitted} class="fall-fitted" />
    </g>
  );
}

const Axes = ({ drawing: { box, degrees, times } }: { drawing: FallDrawing }) => (
  <g class="fall-words">
    {degrees.map(({ at, text }) => (
      <text key={at} x={box.left - 8} y={at + 4} text-anchor="end">
        {text}
      </text>
    ))}
    <text x={box.left - 8} y={box.bottom + 18} text-anchor="end">
      °C
    </text>
    {times.map(({ at, text }) => (
      <g key={at}>
        <line x1={at} x2={at} y1={box.bottom} y2={box.bottom + 5} class="fall-tick" />
        {at < box.left + FIRST ? null : (
          <text x={at} y={box.bottom + 18} text-anchor="middle">
            {text}
          </text>
        )}
      </g>
    ))}
  </g>
);

const FIRST = 20; // [px] from the left edge: nearer, the time would stand on the °C
const EDGE = 12; // [px] from the night to the ruler's edge
const BODY = 30; // [px]

/** The rule stood upright: nought is the evening's warmth, the stroke what was lost, the line what it would have been. */
function Ruler({ drawing: { box, ruler } }: { drawing: FallDrawing }) {
  const edge = box.right + EDGE;
  const bottom = Math.max(...ruler.graduations.map(({ at }) => at), ruler.measured, ruler.drawn?.to ?? 0);
  return (
    <g class="fall-words">
      <rect x={edge} y={ruler.top - 10} width={BODY} height={bottom - ruler.top + 20} class="fall-ruler" />
      {ruler.graduations.map(({ at, text, long }) => (
        <g key={at}>
          <line x1={edge} x2={edge + (long ? 8 : 5)} y1={at} y2={at} class="fall-tick" />
          <text x={edge + 11} y={at + 4}>
            {text}
          </text>
        </g>
      ))}
      <line x1={edge} x2={edge} y1={ruler.top - 10} y2={bottom + 10} class="fall-ruler-edge" />
      <text x={edge + 11} y={bottom + 26}>
        K
      </text>
      {ruler.drawn === null ? null : (
        <g class="fall-drawn">
          <line x1={edge + BODY + 10} x2={edge + BODY + 10} y1={ruler.drawn.from} y2={ruler.drawn.to} />
          {[ruler.drawn.from, ruler.drawn.to].map((at) => (
            <line key={at} x1={edge + BODY + 6} x2={edge + BODY + 14} y1={at} y2={at} />
          ))}
        </g>
      )}
      <line x1={box.right} x2={edge - 6} y1={ruler.measured} y2={ruler.measured} class="fall-fall" />
      <path
        d={`M${edge - 9} ${ruler.measured + 1}C${edge - 3} ${ruler.measured - 1} ${edge + 3} ${ruler.measured + 1} ${edge + 9} ${ruler.measured - 1}`}
        class="fall-stroke"
      />
    </g>
  );
}
