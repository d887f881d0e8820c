/** What a file changes of the house that it is added to. */
import type { FileChange } from '../../server/api/shapes.ts';
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';
import { Choices } from './Choices.tsx';
import type { HouseDraft } from './draft.ts';
import { believing, isBelieved } from './exports.ts';

interface ChangeNoteProps {
  readonly file: string;
  readonly change: FileChange;
  readonly draft: HouseDraft;
  readonly onDraft: (draft: HouseDraft) => void;
}

export function ChangeNote({
  file,
  change: { kind, of, newReadings, conflicts },
  draft,
  onDraft,
}: ChangeNoteProps) {
  if (kind === 'same')
    return (
      <p>
        The very same file is stored already{of === null || of === file ? '' : ` as ${of}`}: nothing to do.
      </p>
    );
  if (kind === 'new') return <p>A logger that this house does not have yet.</p>;
  const stored = of ?? 'the stored file';
  const more = newReadings === 0 ? 'no new readings' : figures.count(newReadings, 'new reading');
  return (
    <>
      <p>
        It continues <strong>{stored}</strong>: {more}
        {conflicts.count === 0 ? ', and no contradiction.' : '.'}
      </p>
      {conflicts.count === 0 ? null : (
        <>
          <p>
            {figures.count(conflicts.count, 'instant has', 'instants have')} another value in it than in what
            is stored:
          </p>
          <Table
            caption={`The first of the readings in which ${file} differs from ${stored}`}
            rows={conflicts.first}
            keyOf={({ at, column }) => `${at} ${column}`}
            columns={[
              { head: 'When', cell: ({ at }) => figures.moment(at) },
              { head: 'Column', cell: ({ column }) => column },
              { head: 'Stored', cell: ({ stored: value }) => figures.decimal(value, 2), numeric: true },
              { head: 'Brought', cell: ({ brought }) => figures.decimal(brought, 2), numeric: true },
            ]}
          />
          {of === null || of === file ? null : (
            <Choices
              legend="Which is believed where they differ?"
              choices={[
                {
                  label: `What is stored, ${of}`,
                  chosen: isBelieved(draft, of, file),
                  choose: () => onDraft(believing(draft, of, file)),
                },
                {
                  label: `What is brought, ${file}`,
                  chosen: isBelieved(draft, file, of),
                  choose: () => onDraft(believing(draft, file, of)),
                },
              ]}
            />
          )}
        </>
      )}
    </>
  );
}
