/** The lines of a log, pasted in place of a file: on a phone the nearest way. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { FormField } from '../parts/FormField.tsx';
import type { PathOf } from './houseFolder.ts';
import { FIRST_NAME, isLog, pastedPath } from './pastedLog.ts';

interface PasteFieldProps {
  readonly busy: boolean;
  /** What was pasted elsewhere on the page. */
  readonly offered: { readonly text: string } | null;
  /** The paths that have come. */
  readonly taken: readonly string[];
  readonly send: (found: readonly PathOf<File>[]) => void;
}

export function PasteField({ busy, offered, taken, send }: PasteFieldProps) {
  const [text, setText] = useState('');
  const [name, setName] = useState(FIRST_NAME);
  const [told, setTold] = useState(false);
  const [open, setOpen] = useState(false);
  const [offers, setOffers] = useState(0);
  const nameField = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (offered === null) return;
    setText(offered.text);
    setOpen(true);
    setOffers((it) => it + 1);
  }, [offered]);
  useEffect(() => {
    nameField.current?.focus();
    nameField.current?.select();
  }, [offers]);
  const take = (event: Event) => {
    event.preventDefault();
    setTold(true);
    if (!isLog(text)) return;
    const path = pastedPath(name, taken);
    send([{ path, file: new File([text], path, { type: 'text/csv' }) }]);
    setText('');
    setName(FIRST_NAME);
    setTold(false);
    setOpen(false);
  };
  return (
    <details open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Or paste the lines of a log</summary>
      <form class="paste" onSubmit={take} noValidate>
        <FormField
          label="The lines"
          hint="The whole table with its heading, copied where it is shown."
          {...(told && !isLog(text)
            ? { problem: 'Paste at least the heading and one line of readings.' }
            : {})}
        >
          {(ties) => (
            <textarea
              {...ties}
              rows={5}
              spellcheck={false}
              autocomplete="off"
              value={text}
              onInput={({ currentTarget }) => setText(currentTarget.value)}
            />
          )}
        </FormField>
        <FormField label="What to call it" hint="The room helps, such as Kitchen or Outside.">
          {(ties) => (
            <input
              {...ties}
              ref={nameField}
              type="text"
              autocomplete="off"
              value={name}
              onInput={({ currentTarget }) => setName(currentTarget.value)}
            />
          )}
        </FormField>
        <p>
          <button type="submit" disabled={busy}>
            Take these lines in
          </button>
        </p>
      </form>
    </details>
  );
}
