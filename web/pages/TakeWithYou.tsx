/** The house's folder to take along, what was brought when, and the way back from the last time. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { HouseDetail, KeptImport } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { folderAddress, problemsOf, undoImport } from '../api.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { BringPack } from './BringPack.tsx';
import { SheetPhotos } from './SheetPhotos.tsx';

interface TakeWithYouProps {
  readonly house: HouseDetail;
  /** Loads the house anew. */
  readonly again: () => void;
}

export function TakeWithYou({ house: { id, name, imports }, again }: TakeWithYouProps) {
  return (
    <section>
      <h2>Take it with you</h2>
      <HandOver id={id} name={name} />
      <SheetPhotos id={id} name={name} />
      <p>
        <a href={folderAddress(id)} download={`${name}.zip`}>
          The house folder as a zip
        </a>
        : house.json and the readings as they were brought.
      </p>
      <Brought imports={imports} />
      <BringPack />
      <Undo id={id} imports={imports} again={again} />
    </section>
  );
}

/** A list that is longer than this is folded: a gateway posts every day. */
const FOLDED_FROM = 8;
const SHOWN = 5;

/** The latest first. */
function Brought({ imports }: Pick<HouseDetail, 'imports'>) {
  if (imports.length === 0) return null;
  const latestFirst = imports.toReversed();
  const shown = imports.length < FOLDED_FROM ? imports.length : SHOWN;
  const earlier = latestFirst.slice(shown);
  return (
    <>
      <h3>What was brought</h3>
      <ImportList imports={latestFirst.slice(0, shown)} />
      {earlier.length === 0 ? null : (
        <details>
          <summary>{earlier.length} earlier</summary>
          <ImportList imports={earlier} />
        </details>
      )}
    </>
  );
}

const ImportList = ({ imports }: Pick<HouseDetail, 'imports'>) => (
  <ul>
    {imports.map((it, i) => (
      <li key={`${i} ${it.at}`} class="small">
        {whenOf(it)}: {filesOf(it)}
      </li>
    ))}
  </ul>
);

/** As files, each of which opens and prints by itself. */
const HandOver = ({ id, name }: { readonly id: string; readonly name: string }) => (
  <ul>
    <li>
      <a href={houseFile(id, 'sheet.html')} download={`${name}, handover sheet.html`}>
        The handover sheet
      </a>
      : the answer, the record and room to sign, to be opened in any browser and printed (
      <a href={houseFile(id, 'sheet.html')} target="_blank" rel="noopener">
        open it now
      </a>
      ).
    </li>
    <li>
      <a href={houseFile(id, 'first-page.html')} download={`${name}, first page.html`}>
        Its first page alone
      </a>
      : for the people who live there.
    </li>
    <li>
      <a href={houseFile(id, 'pack.zip')} download={`${name}, handover pack.zip`}>
        The handover pack as a zip
      </a>
      : the sheet, the house folder, the figures and the hashes that show whether anything was changed.
    </li>
  </ul>
);

const houseFile = (id: string, file: string) => `/api/houses/${encodeURIComponent(id)}/${file}`;

interface UndoProps {
  readonly id: string;
  readonly imports: readonly KeptImport[];
  readonly again: () => void;
}

function Undo({ id, imports, again }: UndoProps) {
  const [state, setState] = useState<'asked' | 'under way' | null>(null);
  const [undone, setUndone] = useState<KeptImport | null>(null);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const yes = useRef<HTMLButtonElement>(null);
  const done = useRef<HTMLParagraphElement>(null);
  const begin = useRef<HTMLButtonElement>(null);
  const before = useRef(state);
  // What was pressed is gone: the focus goes where it leads on.
  useEffect(() => {
    if (state === 'asked') yes.current?.focus();
    else if (state === null && before.current !== null) (begin.current ?? done.current)?.focus();
    before.current = state;
  }, [state]);
  const last = imports.length > 1 ? imports[imports.length - 1] : undefined;
  const undo = async (it: KeptImport) => {
    setState('under way');
    try {
      await undoImport(id);
      setUndone(it);
      setProblems([]);
      again();
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setState(null);
  };
  return (
    <>
      <ProblemList problems={problems} urgent />
      {undone === null ? null : (
        <p role="status" ref={done} tabIndex={-1}>
          Taken back: {filesOf(undone)}, brought on {whenOf(undone)}. The house stands as it did before.
        </p>
      )}
      {last === undefined || last === undone ? null : state === null ? (
        <button ref={begin} type="button" onClick={() => setState('asked')}>
          Undo the last import
        </button>
      ) : (
        <div>
          <p>
            This takes back {filesOf(last)}, brought on {whenOf(last)}.
          </p>
          <p>
            <button
              ref={yes}
              type="button"
              class="main"
              disabled={state === 'under way'}
              onClick={() => undo(last)}
            >
              Take it back
            </button>{' '}
            <button type="button" disabled={state === 'under way'} onClick={() => setState(null)}>
              Leave it
            </button>
          </p>
        </div>
      )}
    </>
  );
}

const filesOf = ({ files }: KeptImport) => (files.length === 0 ? 'a change of the house' : files.join(', '));

const whenOf = ({ at }: KeptImport) => (at === null ? 'an earlier day' : figures.moment(at));
