/** Bring a house: from its loggers' files alone or with house.json; every guess is shown, and changed, before it is kept. */

import { useEffect } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { BringingPreview } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { getHouse, houseText } from '../api.ts';
import { FileEntry } from '../bringing/FileEntry.tsx';
import { HouseFields } from '../bringing/HouseFields.tsx';
import { stillMissing } from '../bringing/missing.ts';
import { problemsOfDraft } from '../bringing/problems.ts';
import { QuestionList } from '../bringing/QuestionList.tsx';
import { type BeginningHouse, useBegun } from '../bringing/useBegun.ts';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { ProgressLine } from '../parts/ProgressLine.tsx';
import { useLoaded } from '../useLoaded.ts';
import './Bring.css';
import { DropField } from './DropField.tsx';
import { takeHandedOn } from './handedOn.ts';
import type { PathOf } from './houseFolder.ts';
import { PackBrought } from './PackBrought.tsx';
import { packIn } from './packIn.ts';
import { SentFiles } from './SentFiles.tsx';
import { type Bringing, useBringing } from './useBringing.ts';
import { usePack } from './usePack.ts';

export function Bring() {
  const { route, query } = useLocation();
  const onto = query.onto ?? null;
  const { loaded } = useLoaded(
    (signal) => (onto === null ? Promise.resolve(null) : storedHouse(onto, signal)),
    onto ?? '',
  );
  const stored = loaded.kind === 'loaded' ? loaded.value : null;
  const bringing = useBringing(onto, (id) => route(`/house/${id}`));
  const { files, sending, preview, broughtHouse, problems } = bringing;
  const pack = usePack();
  const take = async (found: readonly PathOf<File>[]) => {
    const file = await packIn(found);
    if (file === null) return bringing.send(found);
    if (onto === null) return pack.bring(file);
    bringing.complain(packOntoHouse);
  };
  useEffect(() => {
    take(takeHandedOn());
  }, []);
  const house = useBegun({ preview, broughtHouse, stored: stored?.text ?? null, write: bringing.write });
  return (
    <PageFrame title={stored === null ? 'Bring a house' : `Add readings to ${stored.name}`}>
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} /> : null}
      <p>
        {stored === null
          ? 'The loggers’ files are enough: CSV or text, also zipped. A house.json is welcome and not needed; a handover pack comes in as the house that it is.'
          : 'Bring new loggers, or later exports of those that are here: only what is new is added.'}{' '}
        Nothing leaves this computer, and nothing is stored before you say so.
      </p>
      <DropField
        busy={sending !== null || bringing.keeping}
        send={take}
        complain={bringing.complain}
        taken={files.map(({ path }) => path)}
      />
      <PackBrought state={pack.state} />
      <ProblemList problems={problems} urgent />
      {sending === null ? null : <ProgressLine {...sending} onCancel={bringing.stop} />}
      <SentFiles files={files} sending={sending !== null} sendRest={bringing.sendRest} />
      {onto === null && house.begun !== null ? (
        <HouseFields begun={house.begun} change={house.change} />
      ) : null}
      {preview === null ? null : <Seen preview={preview} house={house} isNew={onto === null} />}
      {files.length === 0 ? null : <Keep bringing={bringing} house={house} isNew={onto === null} />}
    </PageFrame>
  );
}

async function storedHouse(id: string, signal: AbortSignal) {
  const [{ name }, text] = await Promise.all([getHouse(id, signal), houseText(id, signal)]);
  return { name, text };
}

const packOntoHouse: Message = {
  code: 'pack-onto-house',
  text: 'This zip is a handover pack: a house by itself, which cannot be added to another.',
  remedy: 'Drop it on “All houses”; or unpack it and bring only its loggers’ files here.',
};

interface SeenProps {
  readonly preview: BringingPreview;
  readonly house: BeginningHouse;
  readonly isNew: boolean;
}

function Seen({ preview, house: { begun, change, anew }, isNew }: SeenProps) {
  // where it is added to a house, the file itself tells of its conflicts, with the choice beside them
  const notes = preview.notes.filter(({ code }) => isNew || code !== 'exports-conflict');
  const problems = preview.problems.filter(({ code }) => code !== 'house-json-missing');
  if (begun === null)
    return (
      <section>
        <h2>house.json cannot be read</h2>
        <ProblemList problems={problems} />
        <p>Mend it and bring it again, or go on without it.</p>
        <button type="button" onClick={anew}>
          Begin a new one from the files
        </button>
      </section>
    );
  return (
    <>
      {problems.length === 0 ? null : (
        <section aria-live="polite">
          <h2>Not right yet</h2>
          <ProblemList problems={problems} />
        </section>
      )}
      <QuestionList begun={begun} preview={preview} change={change} />
      <section>
        <h2>The files</h2>
        {preview.missing.length === 0 ? null : (
          <p>
            Still missing, named by house.json: <strong>{preview.missing.join(', ')}</strong>. Add them here;
            without them the rest is assessed alone.
          </p>
        )}
        <ul class="files">
          {byName(preview.files).map((file) => (
            <li key={file.imported.file}>
              <FileEntry file={file} begun={begun} preview={preview} change={change} />
            </li>
          ))}
        </ul>
      </section>
      {notes.length === 0 ? null : (
        <section>
          <h2>Seen together</h2>
          <ProblemList problems={notes} />
        </section>
      )}
    </>
  );
}

/** Always in the same order, however they were read. */
const byName = (files: BringingPreview['files']) =>
  files.toSorted((a, b) => a.imported.file.localeCompare(b.imported.file, 'en'));

interface KeepProps {
  readonly bringing: Bringing;
  readonly house: BeginningHouse;
  readonly isNew: boolean;
}

function Keep({ bringing, house: { begun, waiting, begin }, isNew }: KeepProps) {
  const { sending, reading, writing, preview, keeping } = bringing;
  const draft = begun?.draft;
  const busy = sending !== null || reading !== null || writing || waiting;
  const missing = draft === undefined || preview === null ? [] : stillMissing(draft, preview);
  const named = draft !== undefined && Object.keys(problemsOfDraft(draft).house).length === 0;
  const drop = () => {
    begin();
    bringing.drop();
  };
  return (
    <>
      {missing.length === 0 ? null : (
        <section id="missing" aria-live="polite">
          <h2>Still missing</h2>
          <ul class="missing">
            {missing.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
      <div class="keep">
        <button
          type="button"
          class="main"
          disabled={!preview?.ready || !named || missing.length > 0 || busy || keeping}
          onClick={bringing.keep}
        >
          {keeping ? 'Keeping it…' : isNew ? 'Keep this house' : 'Add these readings'}
        </button>
        <button type="button" onClick={drop} disabled={keeping}>
          Drop it all
        </button>
        {busy && sending === null ? (
          <div class="keep-reading small">
            <ProgressLine {...(reading ?? { what: 'Taking it in.', done: 0 })} />
          </div>
        ) : missing.length === 0 ? null : (
          <a class="keep-missing small" href="#missing">
            Still missing: {figures.count(missing.length, 'thing')}
          </a>
        )}
      </div>
    </>
  );
}
