/** The lines of a chart with their names: a button each, which switches it off and on again. */
import { useState } from 'preact/hooks';
import { LineSample } from './LineSample.tsx';
import type { Line } from './readingsSeries.ts';

export interface Switches {
  /** Keys of the lines that are switched off. */
  readonly hidden: ReadonlySet<string>;
  /** The key of the line that is pointed at in the legend. */
  readonly picked: string | null;
  readonly toggle: (key: string) => void;
  readonly pick: (key: string | null) => void;
}

export function useSwitches(): Switches {
  const [hidden, setHidden] = useState<ReadonlySet<string>>(new Set());
  const [picked, pick] = useState<string | null>(null);
  const toggle = (key: string) => {
    const next = new Set(hidden);
    if (!next.delete(key)) next.add(key);
    setHidden(next);
  };
  return { hidden, picked, toggle, pick };
}

interface Props {
  readonly lines: readonly Line[];
  readonly switches: Switches;
  /** Given the place for the value of each line, where it is told. */
  readonly tell?: (line: number, element: HTMLElement | null) => void;
}

export const Legend = ({ lines, switches: { hidden, toggle, pick }, tell }: Props) => (
  <ul class="family-legend">
    {lines.map(({ key, label, ink, dash }, i) => (
      <li key={key}>
        <button
          type="button"
          aria-pressed={!hidden.has(key)}
          onClick={() => toggle(key)}
          onMouseEnter={() => pick(hidden.has(key) ? null : key)}
          onMouseLeave={() => pick(null)}
          onFocus={() => pick(hidden.has(key) ? null : key)}
          onBlur={() => pick(null)}
        >
          <LineSample ink={ink} dash={dash} />
          {label}
        </button>
        {tell === undefined ? null : <span class="figure" ref={(element) => tell(i, element)} />}
      </li>
    ))}
  </ul>
);
