/** The fields for what a plug meter read. */
import { useState } from 'preact/hooks';
import type { HeatEntry } from '../../src/house.ts';
import { meterWords } from '../../src/words/testPlan.ts';
import { DateField } from '../parts/DateField.tsx';
import { FormField } from '../parts/FormField.tsx';
import { type DraftProblems, emptyDraft, type HeatDraft, readHeat } from './heatDraft.ts';

interface Props {
  readonly busy: boolean;
  /** @returns whether it was kept */
  readonly onAdd: (entry: HeatEntry) => Promise<boolean>;
}

type Typed = Exclude<keyof HeatDraft, 'how' | 'from' | 'to'>;
const fieldsOf = { readings: ['before', 'after'], energy: ['energy'], power: ['power'] } as const;

export function HeatForm({ busy, onAdd }: Props) {
  const [draft, setDraft] = useState<HeatDraft>(emptyDraft);
  const [problems, setProblems] = useState<DraftProblems>({});
  const field = (key: Typed, hint?: string) => (
    <FormField
      label={meterWords[key]}
      {...(hint === undefined ? {} : { hint })}
      {...(problems[key] === undefined ? {} : { problem: problems[key] })}
    >
      {(ties) => (
        <input
          {...ties}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={draft[key]}
          onInput={({ currentTarget: { value } }) => setDraft({ ...draft, [key]: value })}
        />
      )}
    </FormField>
  );
  const instant = (key: 'from' | 'to') => (
    <DateField
      label={meterWords[key]}
      type="datetime-local"
      value={draft[key]}
      problem={problems[key]}
      onWrite={(value) => setDraft({ ...draft, [key]: value })}
    />
  );
  const add = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const read = readHeat(draft);
    setProblems('problems' in read ? read.problems : {});
    if ('problems' in read) {
      requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      return;
    }
    if (await onAdd(read.entry)) setDraft({ ...emptyDraft, how: draft.how });
  };
  return (
    <form class="heat-form" onSubmit={add} noValidate>
      {instant('from')}
      {instant('to')}
      <FormField label={meterWords.how}>
        {(ties) => (
          <select
            {...ties}
            value={draft.how}
            onChange={({ currentTarget: { value } }) => {
              setProblems({});
              setDraft({ ...draft, how: value as HeatDraft['how'] });
            }}
          >
            {Object.entries(meterWords.ways).map(([way, words]) => (
              <option key={way} value={way}>
                {words}
              </option>
            ))}
          </select>
        )}
      </FormField>
      {fieldsOf[draft.how].map((key) => field(key))}
      {field('plusMinus', meterWords.plusMinusHint)}
      <p class="heat-add">
        <button type="submit" class="main" disabled={busy}>
          {meterWords.add}
        </button>
      </p>
    </form>
  );
}
