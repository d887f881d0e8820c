/** One of a few, by name. */
import { FormField } from '../parts/FormField.tsx';

export interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly value: T;
  readonly options: Readonly<Record<T, string>>;
  readonly onValue: (value: T) => void;
}

export function Choice<T extends string>({ label, hint, value, options, onValue }: ChoiceProps<T>) {
  const names = Object.keys(options) as T[];
  return (
    <FormField label={label} {...(hint === undefined ? {} : { hint })}>
      {(ties) => (
        <select
          {...ties}
          value={value}
          onChange={({ currentTarget }) => {
            const chosen = names.find((name) => name === currentTarget.value);
            if (chosen !== undefined) onValue(chosen);
          }}
        >
          {names.map((name) => (
            <option key={name} value={name}>
              {options[name]}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
