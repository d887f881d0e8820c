/** Stages moved, added and removed by their dates; the house is then assessed again, and each step can be taken back. */
import { useRef } from 'preact/hooks';
import type { StageEntry } from '../../src/house.ts';
import { addStage, moveStages, removeStage } from '../api.ts';
import { ByHandStatus } from '../nights/ByHandStatus.tsx';
import type { ByHand, Change } from '../nights/useByHand.ts';
import { StageFields } from './StageFields.tsx';
import { draftOf, emptyDraft, type StageDraft, stageOf } from './stageDraft.ts';

export function StageDates({ byHand }: { readonly byHand: ByHand }) {
  const { house, change, busy } = byHand;
  const { id } = house;
  const stages: readonly StageEntry[] = house.house.stages ?? [];
  const status = useRef<HTMLDivElement>(null);
  const make = (it: Change) => {
    // What was pressed may go away.
    status.current?.focus();
    return change(it);
  };
  return (
    <section class="screen-only">
      <h2>The dates</h2>
      <p>
        Times are the house’s own, {house.house.location.timeZone}.
        {stages.length === 0 ? ' No stage is named yet: the whole record counts as one.' : ''}
      </p>
      <ByHandStatus byHand={byHand} at={status} />
      {stages.map((stage) => (
        <div key={`${stage.name} ${stage.from} ${stage.to}`} class="stage-dates">
          <h3>{stage.name}</h3>
          <StageFields
            first={draftOf(stage)}
            others={null}
            busy={busy}
            submit={`Move “${stage.name}”`}
            send={(draft) => make(moved(id, stage, draft))}
          >
            <button type="button" class="quiet" disabled={busy} onClick={() => make(removed(id, stage))}>
              Remove “{stage.name}”
            </button>
          </StageFields>
        </div>
      ))}
      <details>
        <summary>Add a stage</summary>
        <StageFields
          first={emptyDraft}
          others={stages.map(({ name }) => name)}
          busy={busy}
          submit="Add this stage"
          send={(draft) => make(added(id, stageOf(draft)))}
        />
      </details>
    </section>
  );
}

const moved = (id: string, { name, from, to }: StageEntry, draft: StageDraft): Change => ({
  words: `“${name}” moved`,
  make: () => moveStages(id, [{ name, from: draft.from, to: draft.to }]),
  takeBack: () => moveStages(id, [{ name, from, to }]),
});

const added = (id: string, stage: StageEntry): Change => ({
  words: `“${stage.name}” added`,
  make: () => addStage(id, stage),
  takeBack: () => removeStage(id, stage.name),
});

const removed = (id: string, stage: StageEntry): Change => ({
  words: `“${stage.name}” removed`,
  make: () => removeStage(id, stage.name),
  takeBack: () => addStage(id, stage),
});
