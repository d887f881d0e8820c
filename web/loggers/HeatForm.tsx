/** The fields for what a plug meter read. */
import { useState } from 'preact/hooks';
import type { HeatEntry } from '../../src/house.ts';
import { meterWords } from '../../src/words/testPlan.ts';
import { FormField } from '../parts/FormField.tsx';
import { type DraftProblems, emptyDraft, type HeatDraft, readHeat } from './heatDraft.ts';

interface Props {
  readonly busy: boolean;
  /** @returns whether it was kept */
  readonly onAdd: (entry: HeatEntry) => Promise<boolean>;
}

type Typed = Exclude<keyof HeatDraft, 'how'>;
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
      {(ties) => {
        const rest = {
          ...ties,
          autocomplete: 'off' as const,
          value: draft[key],
          onInput: ({ currentTarget: { value } }: { readonly currentTarget: HTMLInputElement }) =>
            setDraft({ ...draft, [key]: value }),
        };
        return key === 'from' || key === 'to' ? (
          <input {...rest} type="datetime-local" />
        ) : (
          <input {...rest} type="text" inputMode="decimal" />
        );
      }}
    </FormField>
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
      {field('from')}
      {field('to')}
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
