/** A chart with its name, what it shows in a sentence, and the same figures as a table behind it. */
import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import './ChartFrame.css';

export interface ChartFrameProps {
  readonly title: string;
  readonly summary: string;
  readonly children: ComponentChildren;
  /** Made only when it is asked for. */
  readonly table?: () => ComponentChildren;
}

export function ChartFrame({ title, summary, children, table }: ChartFrameProps) {
  const [shown, setShown] = useState(false);
  const id = useId();
  return (
    <section class="chart" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      <p>{summary}</p>
      {children}
      {table === undefined ? null : (
        <>
          <button
            type="button"
            class="quiet small"
            aria-expanded={shown}
            aria-controls={id}
            onClick={() => setShown(!shown)}
          >
            {shown ? 'Hide the table' : 'Show as table'}
          </button>
          <div id={id} hidden={!shown}>
            {shown ? table() : null}
          </div>
        </>
      )}
    </section>
  );
}
