/** Pencil lines where words are still to come, as high as the words will be, so that nothing jumps. */
import './Skeleton.css';

export interface SkeletonProps {
  /** Shares of the width, one for each line. */
  readonly lines?: readonly number[];
  /** The height of a chart instead [px]. */
  readonly height?: number;
}

export function Skeleton({ lines = [0.9, 1, 0.6], height }: SkeletonProps) {
  return (
    <div class="skeleton" role="status">
      <span class="spoken">Loading</span>
      {height === undefined ? (
        lines.map((share, i) => <span key={i} class="skeleton-line" style={{ width: `${share * 100}%` }} />)
      ) : (
        <span class="skeleton-chart" style={{ height: `${height}px` }} />
      )}
    </div>
  );
}
