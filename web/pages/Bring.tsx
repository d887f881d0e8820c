/** Bring a house: drop or pick its folder, see what was understood, then keep it. */

import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Message } from '../../src/assessment.ts';
import { FormField } from '../parts/FormField.tsx';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { ProgressLine } from '../parts/ProgressLine.tsx';
import './Bring.css';
import { droppedFiles, NotOpened, pickedFiles } from './droppedFiles.ts';
import type { PathOf } from './houseFolder.ts';
import { Preview } from './Preview.tsx';
import { SentFiles } from './SentFiles.tsx';
import { useBringing } from './useBringing.ts';

export function Bring() {
  const { route } = useLocation();
  const bringing = useBringing((id) => route(`/house/${id}`));
  const { files, sending, reading, preview, keeping, problems, send } = bringing;
  const over = useDrop(send, bringing.complain);
  return (
    <PageFrame title="Bring a house">
      <p>
        A house is a folder: <strong>house.json</strong> with its name, place and design, and the loggers’ CSV
        files that it names. Nothing leaves this computer, and nothing is stored before you say so.
      </p>
      <Fields over={over} busy={sending !== null || keeping} send={send} />
      <ProblemList problems={problems} urgent />
      {sending === null ? null : <ProgressLine {...sending} onCancel={bringing.stop} />}
      {reading === null ? null : <ProgressLine {...reading} />}
      <SentFiles files={files} sending={sending !== null} sendRest={bringing.sendRest} />
      {preview === null ? null : <Preview preview={preview} />}
      {files.length === 0 ? null : (
        <div class="keep">
          <button
            type="button"
            class="main"
            disabled={!preview?.ready || sending !== null || reading !== null || keeping}
            onClick={bringing.keep}
          >
            {keeping ? 'Keeping it…' : 'Keep this house'}
          </button>
          <button type="button" onClick={bringing.drop} disabled={keeping}>
            Drop the folder
          </button>
          {preview === null || preview.ready || sending !== null || reading !== null ? null : (
            <p class="small">
              It can be kept once house.json is valid and an inside and an outdoor temperature have come.
            </p>
          )}
        </div>
      )}
    </PageFrame>
  );
}

interface FieldsProps {
  readonly over: boolean;
  readonly busy: boolean;
  readonly send: (found: readonly PathOf<File>[]) => void;
}

function Fields({ over, busy, send }: FieldsProps) {
  const take = ({ currentTarget }: { currentTarget: HTMLInputElement }) => {
    send(pickedFiles(currentTarget));
    currentTarget.value = '';
  };
  return (
    <div class={over ? 'drop drop-over' : 'drop'}>
      <p class="drop-words">
        {over ? 'Let go: the files are read here.' : 'Drop the folder or its files anywhere on this page.'}
      </p>
      <FormField label="Or pick the folder">
        {(ties) => (
          <input {...ties} ref={wholeFolders} type="file" multiple disabled={busy} onChange={take} />
        )}
      </FormField>
      <FormField label="Or pick the files" hint="house.json and the CSVs; more can be added afterwards.">
        {(ties) => <input {...ties} type="file" multiple disabled={busy} onChange={take} />}
      </FormField>
    </div>
  );
}

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
