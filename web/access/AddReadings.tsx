/** For a link that may add: later exports in, shown as understood, then kept. */
import { useRef, useState } from 'preact/hooks';
import type { SharedBringing } from '../../server/api/accessShapes.ts';
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { problemsOf } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { dropAdded, getAdded, keepAdded, sendShared, startAdding } from './accessApi.ts';

interface Added extends SharedBringing {
  readonly id: string;
}

export function AddReadings({ kept }: { readonly kept: () => void }) {
  const [doing, setDoing] = useState<string | null>(null);
  const [added, setAdded] = useState<Added | null>(null);
  const [told, setTold] = useState('');
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const field = useRef<HTMLInputElement>(null);

  const during = async (words: string, work: () => Promise<void>) => {
    setDoing(words);
    setProblems([]);
    setTold('');
    try {
      await work();
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setDoing(null);
  };
  const take = ({ currentTarget }: { currentTarget: HTMLInputElement }) => {
    const files = [...(currentTarget.files ?? [])];
    currentTarget.value = '';
    if (files.length === 0) return;
    during('Sending what you picked.', async () => {
      const { id } = await startAdding();
      for (const file of files) {
        setDoing(`Sending ${file.name}.`);
        await sendShared(id, file);
      }
      setDoing('Reading what has come.');
      setAdded({ id, ...(await getAdded(id)) });
    });
  };
  const keep = ({ id }: Added) =>
    during('Adding it.', async () => {
      await keepAdded(id);
      setAdded(null);
      setTold('The readings are added. What they show is being worked out.');
      kept();
    });
  const drop = ({ id }: Added) =>
    during('Dropping it.', async () => {
      setAdded(null);
      await dropAdded(id);
      field.current?.focus();
    });

  return (
    <section class="screen-only">
      <h2>Add readings</h2>
      <p>
        Bring what a logger of this house has saved since: only what is new is added, and whoever sent you the
        link can take it back.
      </p>
      <div class="access-form">
        <FormField label="Pick the files" hint="CSV, text, zip or gz, as the logger’s app saved them.">
          {(ties) => (
            <input {...ties} ref={field} type="file" multiple disabled={doing !== null} onChange={take} />
          )}
        </FormField>
      </div>
      <p role="status">{doing ?? told}</p>
      <ProblemList problems={problems} urgent />
      {added === null ? null : (
        <>
          <ul>
            {added.files.map(({ file, change }) => (
              <li key={file}>
                {file}: {whatOf(change)}
              </li>
            ))}
          </ul>
          <p>
            {added.ready ? (
              <button type="button" class="main" disabled={doing !== null} onClick={() => keep(added)}>
                Add these readings
              </button>
            ) : null}{' '}
            <button type="button" disabled={doing !== null} onClick={() => drop(added)}>
              Drop it
            </button>
          </p>
        </>
      )}
    </section>
  );
}

function whatOf(change: SharedBringing['files'][number]['change']): string {
  if (change === null) return 'no later export of a logger of this house; it is left out.';
  if (change.kind === 'same' || change.newReadings === 0) return 'nothing new in it.';
  return `${figures.count(change.newReadings, 'new reading')}.`;
}
