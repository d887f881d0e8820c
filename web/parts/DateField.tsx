/** A field for a date, or a date and a time, of the house's clock; what it means stands beneath in words. */
import type { Ref } from 'preact';
import { dateWords } from './dateWords.ts';
import { FormField } from './FormField.tsx';

export interface DateFieldProps {
  readonly label: string;
  readonly type: 'date' | 'datetime-local';
  /** "2026-11-03" or "2026-11-03T14:05"; empty for none. */
  readonly value: string;
  readonly problem?: string | undefined;
  readonly input?: Ref<HTMLInputElement>;
  readonly onWrite: (value: string) => void;
}

export const DateField = ({ label, type, value, problem, input, onWrite }: DateFieldProps) => (
  <FormField label={label} hint={dateWords(value)} {...(problem === undefined ? {} : { problem })}>
    {(ties) => (
      <input
        {...ties}
        {...(input === undefined ? {} : { ref: input })}
        class="date-field"
        type={type}
        autocomplete="off"
        value={value}
        onInput={({ currentTarget }) => onWrite(currentTarget.value)}
      />
    )}
  </FormField>
);
