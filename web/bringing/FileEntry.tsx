/** One file: where its logger hung, its account, its first rows under what they are taken for, and the rest on demand. */
import type { BringingPreview, FilePreview } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { quantities } from '../parts/quantities.ts';
import { placementsOf, withColumn, withFile, withPlacement, withRead } from './answers.ts';
import type { Begun } from './begun.ts';
import { ChangeNote } from './ChangeNote.tsx';
import { ColumnTable } from './ColumnTable.tsx';
import { columnsOf } from './columnsOf.ts';
import { elementNames, filesOf, type HouseDraft } from './draft.ts';
import { asLaterExport, byItself } from './exports.ts';
import { PlacementFields } from './PlacementFields.tsx';
import { problemsOfDraft } from './problems.ts';
import { ReadFields } from './ReadFields.tsx';
import { clockWords, dialectWords } from './readWords.ts';

interface FileEntryProps {
  readonly file: FilePreview;
  readonly begun: Begun;
  readonly preview: BringingPreview;
  readonly change: (draft: HouseDraft) => void;
}

export function FileEntry({ file: { imported, change: changes }, begun, preview, change }: FileEntryProps) {
  const { file, understood } = imported;
  const { draft, remembered, questions } = begun;
  // what is asked above is not told once more
  const notes = imported.notes.filter(
    ({ code, where }) =>
      !questions.some((it) => it.file === file && it.code === code && it.column === (where?.column ?? null)),
  );
  const placements = placementsOf(file, draft);
  const problems = problemsOfDraft(draft);
  const used = placements.some(({ place }) => place !== 'left out');
  const columns = columnsOf(file, begun, preview);
  const said = placements.some(({ timeZone }) => timeZone !== '');
  const zoneOf = said ? 'the person' : preview.house === null ? 'nobody' : 'the house';
  const exports = placements.flatMap(filesOf);
  const leader = exports.find((it) => it !== file);
  const later = leader !== undefined && (changes !== null || placements.every((it) => it.file !== file));
  if (changes?.kind === 'same')
    return (
      <>
        <h3>{file}</h3>
        <ChangeNote file={file} change={changes} draft={draft} onDraft={change} />
      </>
    );
  return (
    <>
      <h3>{file}</h3>
      {changes === null ? null : <ChangeNote file={file} change={changes} draft={draft} onDraft={change} />}
      {later ? (
        <p>
          {changes === null ? `A later export of ${leader}. ` : ''}
          <button type="button" class="quiet" onClick={() => change(byItself(draft, file))}>
            It is another logger
          </button>
        </p>
      ) : understood === null && !used ? (
        <p>It is left out.</p>
      ) : (
        placements.map((placement, i) => (
          <PlacementFields
            key={placement.columns.temperature ?? i}
            placement={placement}
            problems={problems.of(placement)}
            several={placements.length > 1}
            change={(is) => change(withPlacement(draft, placement, is))}
            others={leader === undefined ? othersOf(file, draft) : []}
            laterOf={(of) => change(asLaterExport(draft, file, of))}
            elements={elementNames(draft, placement.element)}
          />
        ))
      )}
      {imported.rows === 0 && imported.channels.length === 0 ? null : <Account imported={imported} />}
      {remembered.has(file) ? <p class="small">Read as the last file of this layout was.</p> : null}
      {understood === null ? (
        <ProblemList problems={notes} />
      ) : (
        <>
          <p class="small lesser">{clockWords(understood, zoneOf)}</p>
          <ColumnTable
            file={file}
            columns={columns}
            sample={understood.sample}
            change={
              used && !later ? (column, role) => change(withColumn(draft, file, column, role, columns)) : null
            }
          />
          {notes.length === 0 ? null : (
            <details open={imported.channels.length === 0 ? true : undefined}>
              <summary>What was noticed: {figures.count(notes.length, 'thing')}</summary>
              <ProblemList problems={notes} />
            </details>
          )}
          <details>
            <summary>How it was read{used ? ', and reading it otherwise' : ''}</summary>
            <p class="small">{dialectWords(understood)}</p>
            <Ranges imported={imported} />
            {exports.length > 1 ? (
              <p class="small">
                What is said here holds for all exports of this logger: {exports.join(', ')}.
              </p>
            ) : null}
            {used && placements[0] ? (
              <ReadFields
                placement={placements[0]}
                problems={problems.of(placements[0])}
                serial={understood.clock.written.startsWith('serial')}
                read={(read) => change(withRead(draft, file, read))}
                change={(is) => change(withFile(draft, file, is))}
              />
            ) : null}
            {understood.preamble.lines.length === 0 ? null : (
              <>
                <p class="small">Above the header stands:</p>
                <pre class="small">{understood.preamble.lines.join('\n')}</pre>
              </>
            )}
          </details>
        </>
      )}
    </>
  );
}

/** The loggers that a file may be a later export of, each by its first file. */
const othersOf = (file: string, { placements }: HouseDraft) => [
  ...new Set(placements.filter((it) => it.file !== file && it.place !== 'left out').map((it) => it.file)),
];

function Account({ imported: { rows, readings, rejected, from, to, intervalS } }: { imported: Imported }) {
  return (
    <p class="small figure">
      {figures.count(rows, 'row')}
      {readings === rows ? '' : `, ${figures.count(readings, 'reading')}`}
      {intervalS === null ? '' : `, one every ${figures.duration(intervalS)}`}
      {rejected > 0 ? `, ${rejected} without a reading` : ''}
      {from === null || to === null ? '.' : `. First ${figures.moment(from)}, last ${figures.moment(to)}.`}
    </p>
  );
}

const Ranges = ({ imported: { channels } }: { imported: Imported }) => (
  <ul class="small">
    {channels.map(({ column, quantity, mean, min, max, doubted }) => (
      <li key={column} class="figure">
        “{column}”: {quantities[quantity].title.toLowerCase()}
        {mean === null || min === null || max === null
          ? null
          : ` from ${figure(min)} to ${figure(max)} ${quantities[quantity].unit}, in the mean ${figure(mean)}`}
        {doubted > 0 ? `; ${figures.count(doubted, 'reading')} kept out` : ''}.
      </li>
    ))}
  </ul>
);

const figure = (value: number) => figures.decimal(value, Math.abs(value) < 100 ? 1 : 0);
