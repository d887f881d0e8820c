/** A question with its answers: one of them, by a touch. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import './Choices.css';

export interface ChoicesProps {
  readonly legend: ComponentChildren;
  readonly choices: readonly {
    readonly label: string;
    readonly chosen: boolean;
    readonly choose: () => void;
  }[];
}

export function Choices({ legend, choices }: ChoicesProps) {
  const name = useId();
  return (
    <fieldset class="choices">
      <legend>{legend}</legend>
      {choices.map(({ label, chosen, choose }) => (
        <label key={label}>
          <input type="radio" name={name} checked={chosen} onChange={choose} />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
