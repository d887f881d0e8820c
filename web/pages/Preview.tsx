/** What was understood of a house folder, file by file, before anything of it is stored. */

import type { BringingPreview } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { signed } from '../charts/chartWords.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { quantities } from '../parts/quantities.ts';
import './Preview.css';

export function Preview({
  preview: { name, problems, imports, missing, unnamed },
}: {
  preview: BringingPreview;
}) {
  return (
    <>
      <section aria-live="polite">
        <h2>{name ?? 'The house has no name yet'}</h2>
        <ProblemList problems={problems} />
        {missing.length > 0 ? (
          <p>
            Still missing, named by house.json: <FileNames files={missing} />. Add them here; without them the
            rest is assessed alone.
          </p>
        ) : null}
        {unnamed.length > 0 ? (
          <p>
            Not named by house.json, so not stored: <FileNames files={unnamed} />.
          </p>
        ) : null}
      </section>
      {imports.length > 0 ? (
        <section>
          <h2>What was understood</h2>
          <ul class="understood">
            {imports.map((file) => (
              <Understood key={file.file} imported={file} />
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}

const FileNames = ({ files }: { files: readonly string[] }) => <strong>{files.join(', ')}</strong>;

function Understood({ imported }: { imported: Imported }) {
  const { file, rows, rejected, from, to, intervalS, channels, notes } = imported;
  return (
    <li>
      <h3>{file}</h3>
      <p class="small lesser">
        {figures.count(rows, 'row')}
        {intervalS === null ? '' : `, one every ${figures.duration(intervalS)}`}
        {rejected > 0 ? `, ${rejected} without a reading` : ''}
        {from === null || to === null ? '' : `. First ${figures.moment(from)}, last ${figures.moment(to)}`}.
      </p>
      <ul>
        {channels.map(({ column, quantity, mean, min, max }) => (
          <li key={column} class="small">
            “{column}” is <strong>{quantities[quantity].title.toLowerCase()}</strong>
            {mean === null || min === null || max === null ? null : (
              <span class="figure">
                , {reading(min)} to {reading(max)} {quantities[quantity].unit}, in the mean {reading(mean)}
              </span>
            )}
          </li>
        ))}
      </ul>
      <ProblemList problems={notes} />
    </li>
  );
}

const reading = (value: number) => signed(value, Math.abs(value) < 100 ? 1 : 0);
