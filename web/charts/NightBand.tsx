/** One night of the row. The figures come from `nightBands.ts`; here they become marks. */
import { type Band, heightOf, LINE, type Point, type RowScale } from '../../src/sheet/drawing/nightBands.ts';

interface Props {
  readonly band: Band;
  readonly scale: RowScale;
  readonly pitch: number;
}

export const NightBand = ({ band, scale, pitch }: Props) => (
  <svg class={band.hollow ? 'band hollow' : 'band'} width={pitch} height={scale.height} aria-hidden="true">
    {scale.ticks.map((tick) => (
      <line key={tick} class="day" x1={0} x2={pitch} y1={heightOf(scale, tick)} y2={heightOf(scale, tick)} />
    ))}
    <g transform={`translate(${(pitch - band.width) / 2} 0)`}>
      <rect x={0.5} y={0.5} width={band.width - 1} height={scale.height - 1} />
      {scale.ticks.map((tick) => (
        <line
          key={tick}
          class="degree"
          x1={1}
          x2={band.width - 1}
          y1={heightOf(scale, tick)}
          y2={heightOf(scale, tick)}
        />
      ))}
      <path class="outside" d={path(band.outside)} />
      <path class="inside" d={path(band.inside)} />
      <path class="fall" d={path(band.fall)} />
      {band.drop && <Drop {...band.drop} width={band.width} height={scale.height} />}
      {band.reason?.lines.map((line, i) => (
        <text key={line} x={band.reason?.at.x} y={(band.reason?.at.y ?? 0) + i * LINE} text-anchor="middle">
          {line}
        </text>
      ))}
    </g>
  </svg>
);

/** Under the end of the fall: over it the line itself comes down. */
const Drop = ({
  text,
  at,
  width,
  height,
}: {
  readonly text: string;
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}) => (
  <>
    <circle cx={at.x} cy={at.y} r={2.5} />
    <text class="drop" x={width - 5} y={Math.min(at.y + 17, height - 5)} text-anchor="end">
      {text}
    </text>
  </>
);

const path = (pieces: readonly (readonly Point[])[]) =>
  pieces.map((piece) => `M${piece.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`).join('');
