/** A term with a dotted underline; touched, it opens its meaning in place. */
import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { type GlossaryTerm, glossary } from './glossary.ts';
import './Term.css';

export interface TermProps {
  readonly of: GlossaryTerm;
  /** The words to show when they are not the term itself. */
  readonly children?: ComponentChildren;
}

export function Term({ of, children }: TermProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  return (
    <>
      <button
        type="button"
        class="term"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
        onKeyDown={(event) => event.key === 'Escape' && setOpen(false)}
      >
        {children ?? of}
      </button>
      <span id={id} class="term-meaning" hidden={!open} role="note">
        {glossary[of]}
      </span>
    </>
  );
}
