/** A field with its label above it, what is wanted beneath, and what is wrong with it in place. */
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import './FormField.css';

/** What ties the input to its words: spread it onto the input. */
export interface FieldTies {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': boolean | undefined;
}

export interface FormFieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly problem?: string;
  readonly children: (ties: FieldTies) => JSX.Element;
}

export function FormField({ label, hint, problem, children }: FormFieldProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {children({
        id,
        'aria-describedby': described || undefined,
        'aria-invalid': problem === undefined ? undefined : true,
      })}
      {hint ? (
        <p id={`${id}-hint`} class="small lesser">
          {hint}
        </p>
      ) : null}
      {problem ? (
        <p id={`${id}-problem`} class="small field-problem">
          {problem}
        </p>
      ) : null}
    </div>
  );
}
