/** One line that stays in sight: undo, redo, and keeping the changes, with what came of it. */
import { ProblemList } from '../parts/ProblemList.tsx';
import { labelled } from './labels.ts';
import type { Editor } from './useEditor.ts';
import type { Keeping } from './useKeeping.ts';

export interface KeepChangesProps {
  readonly id: string;
  readonly editor: Editor;
  readonly keeping: Keeping;
  readonly changed: boolean;
}

export function KeepChanges({ id, editor, keeping, changed }: KeepChangesProps) {
  const { undo, redo, canUndo, canRedo, refused, house } = editor;
  return (
    <section class="buildup-keep screen-only" aria-label="Changes">
      {refused.length > 0 ? (
        <p role="alert" class="small">
          That cannot be: {labelled(refused.join(' '))}
        </p>
      ) : null}
      <ProblemList problems={keeping.problems} urgent />
      <p class="buildup-buttons">
        <button type="button" class="quiet" onClick={undo} disabled={!canUndo}>
          Undo
        </button>
        <button type="button" class="quiet" onClick={redo} disabled={!canRedo}>
          Redo
        </button>
        <button
          type="button"
          class="main"
          onClick={() => keeping.keep(house)}
          disabled={!changed || keeping.state === 'keeping'}
        >
          Keep these changes
        </button>
        <span class="small lesser" role="status">
          {keeping.state === 'keeping' ? (
            'Being kept.'
          ) : changed ? (
            'Not kept yet.'
          ) : keeping.state === 'kept' ? (
            <>
              Kept. The house is assessed again: <a href={`/house/${id}/design`}>see it as drawn</a>.
            </>
          ) : (
            'Nothing is changed.'
          )}
        </span>
      </p>
    </section>
  );
}
