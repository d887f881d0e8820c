/** Where files come in: dropped anywhere on the page, or picked. */
import { useEffect, useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import { FormField } from '../parts/FormField.tsx';
import { droppedFiles, NotOpened, pickedFiles } from './droppedFiles.ts';
import type { PathOf } from './houseFolder.ts';

interface DropFieldProps {
  readonly busy: boolean;
  /** Nothing has come yet. */
  readonly first: boolean;
  readonly send: (found: readonly PathOf<File>[]) => void;
  readonly complain: (problem: Message) => void;
}

export function DropField({ busy, first, send, complain }: DropFieldProps) {
  const over = useDrop(send, complain);
  const take = ({ currentTarget }: { currentTarget: HTMLInputElement }) => {
    send(pickedFiles(currentTarget));
    currentTarget.value = '';
  };
  return (
    <div class={over ? 'drop drop-over' : 'drop'}>
      <p class="drop-words">
        {over
          ? 'Let go: the files are read here.'
          : first
            ? DROP_FIRST
            : 'Drop more files anywhere on this page.'}
      </p>
      <FormField label="Or pick the files" hint="CSV, text, zip or gz; more can be added afterwards.">
        {(ties) => <input {...ties} type="file" multiple disabled={busy} onChange={take} />}
      </FormField>
      <FormField label="Or pick the folder">
        {(ties) => (
          <input {...ties} ref={wholeFolders} type="file" multiple disabled={busy} onChange={take} />
        )}
      </FormField>
    </div>
  );
}

const DROP_FIRST = 'Drop the files or their folder anywhere on this page.';

/** The typings of the page's language do not know this attribute. */
const wholeFolders = (input: HTMLInputElement | null) => {
  if (input !== null) input.webkitdirectory = true;
};

/** Takes what is dropped anywhere on the page. @returns whether something is being held over it */
function useDrop(
  send: (found: readonly PathOf<File>[]) => void,
  complain: (problem: Message) => void,
): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hold = (event: DragEvent) => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      if (event.dataTransfer !== null)
        droppedFiles(event.dataTransfer).then(send, (thrown) => complain(notOpened(thrown)));
    };
    addEventListener('dragover', hold);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', hold);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, [send, complain]);
  return over;
}

const notOpened = (thrown: unknown): Message => ({
  code: 'file-not-opened',
  text: thrown instanceof NotOpened ? thrown.message : 'What was dropped could not be opened.',
  remedy: 'See whether this file may be read and is not held by another program, then drop it again.',
});
