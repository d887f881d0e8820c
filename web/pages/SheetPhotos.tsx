/** Photos put into the handover sheet: picked here, held for this once, made into files to keep. */
import { useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { problemsOf, withPhotos } from '../api.ts';
import { FormField } from '../parts/FormField.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { saveFile } from '../parts/saveFile.ts';
import './TakeWithYou.css';

interface SheetPhotosProps {
  readonly id: string;
  readonly name: string;
}

const KINDS = [
  { file: 'sheet.html', words: 'The handover sheet', ending: 'handover sheet.html' },
  { file: 'pack.zip', words: 'The handover pack', ending: 'handover pack.zip' },
] as const;

export function SheetPhotos({ id, name }: SheetPhotosProps) {
  const [photos, setPhotos] = useState<readonly File[]>([]);
  const [busy, setBusy] = useState(false);
  const [made, setMade] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const make = async ({ file, words, ending }: (typeof KINDS)[number]) => {
    setBusy(true);
    setProblems([]);
    setMade(null);
    try {
      saveFile(await withPhotos(id, file, photos), `${name}, ${ending}`);
      setMade(`${words} is made, with ${figures.count(photos.length, 'photo')}.`);
    } catch (thrown) {
      setProblems(problemsOf(thrown));
    }
    setBusy(false);
  };
  return (
    <details class="screen-only">
      <summary>With photos</summary>
      <FormField
        label="Photos for the sheet"
        hint="JPEG or PNG, each at most 10 MB. They go into the file that is made, and are kept nowhere else."
      >
        {(ties) => (
          <input
            {...ties}
            type="file"
            accept="image/jpeg,image/png"
            multiple
            disabled={busy}
            onChange={({ currentTarget }) => {
              setPhotos([...(currentTarget.files ?? [])]);
              setProblems([]);
              setMade(null);
            }}
          />
        )}
      </FormField>
      <ProblemList problems={problems} urgent />
      <p class="photo-buttons">
        {KINDS.map((kind) => (
          <button
            key={kind.file}
            type="button"
            disabled={busy || photos.length === 0}
            onClick={() => make(kind)}
          >
            {kind.words} with these photos
          </button>
        ))}
      </p>
      <p role="status">{busy ? 'Putting the photos in.' : made}</p>
    </details>
  );
}
