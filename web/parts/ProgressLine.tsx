/** Long work as a pencil line that grows along a scale, with the way out beside it. */
import './ProgressLine.css';

export interface ProgressLineProps {
  readonly what: string;
  /** From 0 to 1. */
  readonly done: number;
  readonly onCancel?: () => void;
}

export function ProgressLine({ what, done, onCancel }: ProgressLineProps) {
  return (
    <div class="progress">
      <p role="status">{what}</p>
      <progress aria-label={what} max={1} value={done} />
      {onCancel ? (
        <button type="button" class="quiet" onClick={onCancel}>
          Stop it
        </button>
      ) : null}
    </div>
  );
}
