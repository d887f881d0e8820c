/** A field that tries what is typed at once. What is refused stays as it was typed, with the reason beneath. */
import { useState } from 'preact/hooks';
import { FormField } from '../parts/FormField.tsx';
import { labelled } from './labels.ts';
import { numberIn, whyNot } from './numberIn.ts';

interface TypedProps<T> {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly value: T | undefined;
  /** @returns why it is refused; nothing when it is taken. Emptied, the value is undefined. */
  readonly onValue: (value: T | undefined) => readonly string[];
}

interface Typed<T> {
  readonly text: string;
  readonly reasons: readonly string[];
  /** What stood in the house after it was typed: once that is another, this is old. */
  readonly beside: T | undefined;
}

/** @param signed it may be below 0, for which many a phone's keys for figures have no sign */
export const NumberField = ({
  signed = false,
  ...props
}: TypedProps<number> & { readonly signed?: boolean }) => (
  <Field {...props} write={String} read={numberIn} inputMode={signed ? 'text' : 'decimal'} />
);

export const TextField = (props: TypedProps<string>) => (
  <Field {...props} write={(text) => text} read={(text) => text} inputMode="text" />
);

interface FieldProps<T> extends TypedProps<T> {
  readonly write: (value: T) => string;
  /** @returns null for what cannot be one */
  readonly read: (text: string) => T | undefined | null;
  readonly inputMode: 'decimal' | 'text';
}

function Field<T>({ label, hint, value, onValue, write, read, inputMode }: FieldProps<T>) {
  const [typed, setTyped] = useState<Typed<T> | null>(null);
  const current = typed !== null && typed.beside === value ? typed : null;
  const stands = value === undefined ? '' : write(value);
  const problem =
    current === null || current.reasons.length === 0
      ? {}
      : {
          problem: `${labelled(current.reasons.join(' '))}${stands ? ` Worked out with ${stands} as yet.` : ''}`,
        };
  return (
    <FormField label={label} {...(hint === undefined ? {} : { hint })} {...problem}>
      {(ties) => (
        <input
          {...ties}
          type="text"
          inputMode={inputMode}
          autocomplete="off"
          value={current?.text ?? stands}
          onInput={({ currentTarget: { value: text } }) => {
            const wanted = read(text);
            const reasons = wanted === null ? [whyNot(text)] : onValue(wanted);
            const taken = wanted !== null && reasons.length === 0;
            setTyped({ text, reasons, beside: taken ? wanted : value });
          }}
        />
      )}
    </FormField>
  );
}
