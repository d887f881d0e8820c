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
  /** Between two rooms, so that there is no outside. */
  readonly within: boolean;
  readonly chosen: number;
  readonly onPick: (layer: number) => void;
}

const FACE = 230; // [px]
const ABOVE = 52; // [px], for the words of the air and the numbers of the layers
const BELOW = 40; // [px], for the rule
const CLEAR = 14; // [px] between the line and the edges of the face
const LEAST_APART = 16; // [px] between two numbers

export function LayersPicture(props: LayersPictureProps) {
  const { layers, temperatures, inside, outside, within, chosen, onPick } = props;
  const frame = useRef<HTMLDivElement>(null);
  const hatch = useId();
  const grain = useId();
  const fall = useId();
  const night = useId();
  const width = Math.min(880, useWidth(frame, 640, PAPER_WIDTH));
  const drawing = layersDrawing(layers, width, FACE);
  const { faces } = drawing;
  const end = faces[faces.length - 1];
  const [coldest, warmest] = [Math.min(inside, outside), Math.max(inside, outside)];
  const spanned = warmest - coldest || 1;
  const height = (celsius: number) => FACE - CLEAR - ((celsius - coldest) / spanned) * (FACE - 2 * CLEAR);
  const path =
    temperatures === null ? null : pathOf(temperatures, drawing, width, { height, inside, outside });
  const coldness = coldnessOf(temperatures, drawing, { inside, outside });
  const numbers = spreadOut(drawing.layers.map(({ from, to }) => (from + to) / 2));
  return (
    <div ref={frame}>
      <svg
        role="img"
        aria-label={
          within
            ? 'The layers from one room to the other.'
            : `The layers from inside to outside, with the temperature from ${inside} °C to ${outside} °C.`
        }
        viewBox={`0 ${-ABOVE} ${width} ${ABOVE + FACE + BELOW}`}
        width={width}
        height={ABOVE + FACE + BELOW}
      >
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="7" class="layers-hatch" />
        </pattern>
        <pattern id={grain} width="60" height="9" patternUnits="userSpaceOnUse">
          <path d="M0 2.5C18 1 34 4.5 60 2.5M0 7C22 8.5 40 5.5 60 7" class="layers-grain" />
        </pattern>
        <linearGradient id={night} gradientUnits="userSpaceOnUse" x1={faces[0]} x2={end}>
          {coldness.map(({ at, share }) => (
            <stop key={at} offset={at} style={{ '--share': `${share}%` }} class="layers-dusk" />
          ))}
        </linearGradient>
        <linearGradient id={fall} gradientUnits="userSpaceOnUse" x1={faces[0]} x2={end}>
          <stop class="layers-warm" />
          <stop class="layers-cold" offset="1" />
        </linearGradient>
        <text x="2" y="-36">
          {within ? 'one room' : 'inside'}
        </text>
        <text x={width - 2} y="-36" text-anchor="end">
          {within ? 'the other' : 'outside'}
        </text>
        {within ? null : <rect x={end} y="0" width={width - end} height={FACE} class="layers-night" />}
        <rect x={faces[0]} y="0" width={end - faces[0]} height={FACE} fill={`url(#${night})`} />
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
              <g key={timber.y}>
                <rect x={from} y={timber.y} width={to - from} height={timber.height} class="layers-timber" />
                <rect
                  x={from}
                  y={timber.y}
                  width={to - from}
                  height={timber.height}
                  fill={`url(#${grain})`}
                />
              </g>
            ))}
            <path d={pencilled(from, i)} class="layers-edge" />
            {i === layers.length - 1 ? <path d={pencilled(to, i + 1)} class="layers-edge" /> : null}
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
          class="layers-frame-ground"
        />
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
        {within ? null : (
          <>
            <text x="2" y={height(inside) + (inside < outside ? -8 : 18)} class="layers-degrees">
              {inside} °C
            </text>
            <text
              x={width - 4}
              y={height(outside) + (inside < outside ? 18 : -8)}
              text-anchor="end"
              class="layers-degrees layers-degrees-out"
            >
              {outside} °C
            </text>
          </>
        )}
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

/** How much of the night is in each face [%], and where that face is [0 to 1 of the whole thickness]. */
function coldnessOf(
  temperatures: readonly number[] | null,
  { faces }: LayersDrawing,
  { inside, outside }: Pick<Air, 'inside' | 'outside'>,
) {
  const thickness = faces[faces.length - 1] - faces[0];
  if (temperatures === null || thickness === 0 || inside === outside) return [{ at: 0, share: 0 }];
  return faces.map((x, i) => {
    const share = (inside - temperatures[i]) / (inside - outside);
    return { at: (x - faces[0]) / thickness, share: Math.round(100 * Math.min(1, Math.max(0, share))) };
  });
}

/** An edge as it is drawn by hand along a rule: past both its ends, and never twice the same. */
function pencilled(x: number, i: number): string {
  const over = 5 + ((i * 7) % 5);
  const lean = ((i * 5) % 3) * 0.4 - 0.4;
  return `M${x + lean} ${-over}L${x - lean} ${FACE + 4}`;
}

const ARM = 200; // [mm] of a folding rule between two joints

/** A folding rule along the outside edge, in millimetres from the inside face: every other arm lies on top. */
function Ruler({ drawing: { faces, graduations, scale } }: { drawing: LayersDrawing }) {
  if (graduations.length === 0) return null;
  const end = faces[faces.length - 1] + 8;
  const arms = Math.ceil((end - faces[0]) / (ARM * scale));
  const jointOf = (arm: number) => Math.min(faces[0] + arm * ARM * scale, end);
  return (
    <g class="layers-ruler">
      {Array.from({ length: arms }, (_, arm) => {
        const [from, to] = [arm === 0 ? faces[0] - 8 : jointOf(arm), jointOf(arm + 1)];
        return (
          <rect
            key={arm}
            x={from}
            y={FACE + 6 + (arm % 2) * 2}
            width={to - from}
            height={BELOW - 10}
            rx="2"
          />
        );
      })}
      {Array.from({ length: arms - 1 }, (_, arm) => (
        <circle key={arm} cx={jointOf(arm + 1)} cy={FACE + 29} r="3" class="layers-joint" />
      ))}
      {graduations.map(({ x, at, long }) => (
        <g key={at}>
          <line x1={x} x2={x} y1={FACE + 6} y2={FACE + (long ? 16 : 11)} />
          {long && x < end - 20 ? (
            <text
              x={x + (at > 0 && at % ARM === 0 ? 7 : 0)}
              y={FACE + 30}
              text-anchor={at > 0 && at % ARM === 0 ? 'start' : 'middle'}
            >
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
