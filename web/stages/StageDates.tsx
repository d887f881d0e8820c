/** Stages moved, added and removed by their dates; the house is then assessed again, and each step can be taken back. */
import { useRef } from 'preact/hooks';
import { moveStages } from '../api.ts';
import { ByHandStatus } from '../nights/ByHandStatus.tsx';
import type { ByHand, Change } from '../nights/useByHand.ts';
import { keepStages } from './keepStages.ts';
import { StageFields } from './StageFields.tsx';
import { draftOf, emptyDraft, type Stage, type StageDraft, withoutStage, withStage } from './stageDraft.ts';

export function StageDates({ byHand }: { readonly byHand: ByHand }) {
  const { house, change, busy } = byHand;
  const { id } = house;
  const stages: readonly Stage[] = house.house.stages ?? [];
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
            <button
              type="button"
              class="quiet"
              disabled={busy}
              onClick={() =>
                make(replaced(id, `“${stage.name}” removed`, stages, withoutStage(stages, stage.name)))
              }
            >
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
          send={(draft) =>
            make(replaced(id, `“${draft.name.trim()}” added`, stages, withStage(stages, draft)))
          }
        />
      </details>
    </section>
  );
}

const moved = (id: string, { name, from, to }: Stage, draft: StageDraft): Change => ({
  words: `“${name}” moved`,
  make: () => moveStages(id, [{ name, from: draft.from, to: draft.to }]),
  takeBack: () => moveStages(id, [{ name, from, to }]),
});

const replaced = (id: string, words: string, before: readonly Stage[], after: readonly Stage[]): Change => ({
  words,
  make: () => keepStages(id, after),
  takeBack: () => keepStages(id, before),
});
