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
