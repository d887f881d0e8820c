/** The fields of one stage, checked when it is sent. */
import { useState } from 'preact/hooks';
import { DateField } from '../parts/DateField.tsx';
import { FormField } from '../parts/FormField.tsx';
import { type DraftProblems, problemsOfDraft, type StageDraft } from './stageDraft.ts';

export interface StageFieldsProps {
  readonly first: StageDraft;
  /** Names that are taken; null where the name stays as it is. */
  readonly others: readonly string[] | null;
  readonly busy: boolean;
  readonly submit: string;
  /** @returns whether it was kept */
  readonly send: (draft: StageDraft) => Promise<boolean>;
  /** What stands beside the button. */
  readonly children?: preact.ComponentChildren;
}

export function StageFields({ first, others, busy, submit, send, children }: StageFieldsProps) {
  const [draft, setDraft] = useState(first);
  const [problems, setProblems] = useState<DraftProblems>({});
  const told = (field: keyof DraftProblems) => {
    const problem = problems[field];
    return problem === undefined ? {} : { problem };
  };
  const ask = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = event.currentTarget;
    const found = problemsOfDraft(draft, others ?? []);
    setProblems(found);
    if (Object.keys(found).length === 0) {
      if ((await send(draft)) && others !== null) setDraft(first);
    } else if (form instanceof HTMLFormElement)
      requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid]')?.focus());
  };
  const date = (field: 'from' | 'to', label: string) => (
    <DateField
      label={label}
      type="datetime-local"
      value={draft[field]}
      {...told(field)}
      onWrite={(value) => setDraft({ ...draft, [field]: value })}
    />
  );
  return (
    <form class="stage-fields" onSubmit={ask} noValidate>
      {others === null ? null : (
        <FormField label="Its name" {...told('name')}>
          {(ties) => (
            <input
              {...ties}
              type="text"
              autocomplete="off"
              maxLength={200}
              value={draft.name}
              onInput={({ currentTarget }) => setDraft({ ...draft, name: currentTarget.value })}
            />
          )}
        </FormField>
      )}
      {date('from', 'From')}
      {date('to', 'To')}
      {others === null ? null : (
        <label class="stage-complete">
          <input
            type="checkbox"
            checked={draft.complete}
            onChange={({ currentTarget }) => setDraft({ ...draft, complete: currentTarget.checked })}
          />
          <span>The house was complete in it</span>
        </label>
      )}
      <div class="stage-buttons">
        <button type="submit" disabled={busy}>
          {submit}
        </button>
        {children}
      </div>
    </form>
  );
}
