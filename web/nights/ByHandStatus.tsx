/** What has become of a change by hand, and the way back. The focus comes here when what was pressed is gone. */
import type { RefObject } from 'preact';
import { ProblemList } from '../parts/ProblemList.tsx';
import { ProgressLine } from '../parts/ProgressLine.tsx';
import './byHand.css';
import type { ByHand } from './useByHand.ts';

export interface ByHandStatusProps {
  readonly byHand: ByHand;
  readonly at: RefObject<HTMLDivElement | null>;
}

export function ByHandStatus({ byHand: { state, last, takeBack }, at }: ByHandStatusProps) {
  return (
    <div class="by-hand-status screen-only" ref={at} tabIndex={-1}>
      {state.kind === 'assessing' ? <ProgressLine what={state.what} done={state.done} /> : null}
      {state.kind === 'failed' ? <ProblemList problems={state.problems} urgent /> : null}
      <p role="status" class="small">
        {state.kind === 'keeping' ? 'Being kept.' : state.kind === 'done' ? state.words : ''}
      </p>
      {last !== null && (state.kind === 'done' || state.kind === 'failed') ? (
        <button type="button" class="quiet" onClick={takeBack}>
          Take this back
        </button>
      ) : null}
    </div>
  );
}
