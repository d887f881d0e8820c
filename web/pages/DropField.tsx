/** Where files come in: dropped or pasted anywhere on the page, or picked. */
import { useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import { FormField } from '../parts/FormField.tsx';
import { pickedFiles } from './droppedFiles.ts';
import type { PathOf } from './houseFolder.ts';
import { PasteField } from './PasteField.tsx';
import { useDrop } from './useDrop.ts';

interface DropFieldProps {
  readonly busy: boolean;
  /** The paths that have come; none at first. */
  readonly taken: readonly string[];
  readonly send: (found: readonly PathOf<File>[]) => void;
  readonly complain: (problem: Message) => void;
}

export function DropField({ busy, taken, send, complain }: DropFieldProps) {
  const [offered, setOffered] = useState<{ text: string } | null>(null);
  const over = useDrop({ send, complain, offer: (text) => setOffered({ text }) });
  const take = ({ currentTarget }: { currentTarget: HTMLInputElement }) => {
    send(pickedFiles(currentTarget));
    currentTarget.value = '';
  };
  return (
    <div class={over ? 'drop drop-over' : 'drop'}>
      <p class="drop-words">
        {over
          ? 'Let go: the files are read here.'
          : taken.length === 0
            ? DROP_FIRST
            : 'Drop or paste more files anywhere on this page.'}
      </p>
      <FormField label="Or pick the files" hint="CSV, text, zip or gz; more can be added afterwards.">
        {(ties) => <input {...ties} type="file" multiple disabled={busy} onChange={take} />}
      </FormField>
      <FormField label="Or pick the folder">
        {(ties) => (
          <input {...ties} ref={wholeFolders} type="file" multiple disabled={busy} onChange={take} />
        )}
      </FormField>
      <PasteField busy={busy} offered={offered} taken={taken} send={send} />
    </div>
  );
}

const DROP_FIRST = 'Drop or paste the files, or their folder, anywhere on this page.';

/** The typings of the page's language do not know this attribute. */
const wholeFolders = (input: HTMLInputElement | null) => {
  if (input !== null) input.webkitdirectory = true;
};
