/** A piece of a line as it stands in the chart, for its legend. */
import type { InkName } from './readingsSeries.ts';
import './LineSample.css';

interface Props {
  readonly ink: InkName;
  /** [px]; empty for a solid line */
  readonly dash: readonly number[];
}

export const LineSample = ({ ink, dash }: Props) => (
  <svg class={`line-sample ${ink}`} width={36} height={10} aria-hidden="true">
    <line x1={0} x2={36} y1={5} y2={5} stroke-dasharray={dash.join(' ')} />
  </svg>
);

/** A piece of hatching between its two edges. */
export const HatchSample = () => (
  <svg class="line-sample graphite" width={36} height={14} aria-hidden="true">
    {[-8, 0, 8, 16, 24, 32].map((x) => (
      <line key={x} class="hatch-stroke" x1={x} x2={x + 14} y1={14} y2={0} />
    ))}
    <line x1={0} x2={36} y1={1} y2={1} stroke-dasharray="2 3" />
    <line x1={0} x2={36} y1={13} y2={13} stroke-dasharray="2 3" />
  </svg>
);
