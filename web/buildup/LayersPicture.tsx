/** The layers as a picture; the names beneath it say the same in words. */
import { useId, useRef } from 'preact/hooks';
import type { Layer } from '../../src/house.ts';
import { PAPER_WIDTH } from '../charts/paper.ts';
import { useWidth } from '../charts/useWidth.ts';
import { type LayersDrawing, layersDrawing } from './layersDrawing.ts';

export interface LayersPictureProps {
  readonly layers: readonly Layer[];
  /** At each face [°C]; null where the method does not hold, so that no line is drawn. */
  readonly temperatures: readonly number[] | null;
  /** Of the air [°C]. */
  readonly inside: number;
  readonly outside: number;
  readonly chosen: number;
  readonly onPick: (layer: number) => void;
}

const FACE = 230; // [px]
const ABOVE = 52; // [px], for the words of the air and the numbers of the layers
const BELOW = 40; // [px], for the rule
const CLEAR = 14; // [px] between the line and the edges of the face
const LEAST_APART = 16; // [px] between two numbers

export function LayersPicture(props: LayersPictureProps) {
  const { layers, temperatures, inside, outside, chosen, onPick } = props;
  const frame = useRef<HTMLDivElement>(null);
  const hatch = useId();
  const fall = useId();
  const width = Math.min(880, useWidth(frame, 640, PAPER_WIDTH));
  const drawing = layersDrawing(layers, width, FACE);
  const { faces } = drawing;
  const end = faces[faces.length - 1];
  const [coldest, warmest] = [Math.min(inside, outside), Math.max(inside, outside)];
  const spanned = warmest - coldest || 1;
  const height = (celsius: number) => FACE - CLEAR - ((celsius - coldest) / spanned) * (FACE - 2 * CLEAR);
  const path =
    temperatures === null ? null : pathOf(temperatures, drawing, width, { height, inside, outside });
  const numbers = spreadOut(drawing.layers.map(({ from, to }) => (from + to) / 2));
  return (
    <div ref={frame}>
      <svg
        role="img"
        aria-label={`The layers from inside to outside, with the temperature from ${inside} °C to ${outside} °C.`}
        viewBox={`0 ${-ABOVE} ${width} ${ABOVE + FACE + BELOW}`}
        width={width}
        height={ABOVE + FACE + BELOW}
      >
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="7" class="layers-hatch" />
        </pattern>
        <linearGradient id={fall} gradientUnits="userSpaceOnUse" x1={faces[0]} x2={end}>
          <stop class="layers-warm" />
          <stop class="layers-cold" offset="1" />
        </linearGradient>
        <text x="2" y="-36">
          inside
        </text>
        <text x={width - 2} y="-36" text-anchor="end">
          outside
        </text>
        {drawing.layers.map(({ from, to, timbers }, i) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the names beneath are buttons for the keyboard
          <g key={i} onClick={() => onPick(i)} class={`layers-layer${i === chosen ? ' layers-chosen' : ''}`}>
            <rect
              x={from}
              y="0"
              width={to - from}
              height={FACE}
              class={layers[i].thicknessMm === undefined ? 'layers-thin' : 'layers-solid'}
            />
            {layers[i].air === undefined ? null : (
              <rect x={from} y="0" width={to - from} height={FACE} fill={`url(#${hatch})`} />
            )}
            {timbers.map((timber) => (
              <rect
                key={timber.y}
                x={from}
                y={timber.y}
                width={to - from}
                height={timber.height}
                class="layers-timber"
              />
            ))}
            <path d={`M${(from + to) / 2} 0L${numbers[i]} -10`} class="layers-leader" />
            <text x={numbers[i]} y="-14" text-anchor="middle">
              {i + 1}
            </text>
          </g>
        ))}
        <rect
          x={drawing.layers[chosen].from}
          y="-2"
          width={drawing.layers[chosen].to - drawing.layers[chosen].from}
          height={FACE + 4}
          class="layers-frame"
        />
        {path === null ? null : (
          <>
            <path d={path} class="layers-line-ground" />
            <path d={path} class="layers-line" stroke={`url(#${fall})`} />
          </>
        )}
        <Ruler drawing={drawing} />
        <text x="2" y={height(inside) + (inside < outside ? -8 : 18)} class="layers-degrees">
          {inside} °C
        </text>
        <text
          x={width - 2}
          y={height(outside) + (inside < outside ? 18 : -8)}
          text-anchor="end"
          class="layers-degrees"
        >
          {outside} °C
        </text>
      </svg>
    </div>
  );
}

interface Air {
  /** Of a temperature in the drawing [px]. */
  readonly height: (celsius: number) => number;
  readonly inside: number;
  readonly outside: number;
}

/** From the air inside through all faces to the air outside. */
function pathOf(
  temperatures: readonly number[],
  { faces }: LayersDrawing,
  width: number,
  { height, inside, outside }: Air,
): string {
  const points = [
    { x: 4, y: height(inside) },
    { x: faces[0] - 16, y: height(inside) },
    ...faces.map((x, i) => ({ x, y: height(temperatures[i]) })),
    { x: faces[faces.length - 1] + 16, y: height(outside) },
    { x: width - 4, y: height(outside) },
  ];
  return points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
}

/** A folding rule along the outside edge, in millimetres from the inside face. */
function Ruler({ drawing: { faces, graduations } }: { drawing: LayersDrawing }) {
  if (graduations.length === 0) return null;
  const end = faces[faces.length - 1];
  return (
    <g class="layers-ruler">
      <rect x={faces[0] - 8} y={FACE + 6} width={end - faces[0] + 16} height={BELOW - 8} />
      {graduations.map(({ x, at, long }) => (
        <g key={at}>
          <line x1={x} x2={x} y1={FACE + 6} y2={FACE + (long ? 16 : 11)} />
          {long && x < end - 12 ? (
            <text x={x} y={FACE + 30} text-anchor="middle">
              {at}
            </text>
          ) : null}
        </g>
      ))}
    </g>
  );
}

/** Pushed to the right until no two of them touch, and back as far as the last one went too far. */
function spreadOut(wanted: readonly number[]): number[] {
  const places: number[] = [];
  for (const x of wanted) places.push(Math.max(x, (places.at(-1) ?? -LEAST_APART) + LEAST_APART));
  return places;
}
