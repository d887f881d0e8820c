/** The first rows of a file under its columns, and over each column what it is taken for, to be changed there. */
import { Table } from '../parts/Table.tsx';
import {
  type ColumnShown,
  canBeUnread,
  notReadWords,
  reasonWords,
  roleName,
  type Understood,
} from './columns.ts';
import { type ColumnRole, columnRoles } from './draft.ts';

interface ColumnTableProps {
  readonly file: string;
  readonly columns: readonly ColumnShown[];
  readonly sample: Understood['sample'];
  /** Null where the file is left out, and nothing can be said of it. */
  readonly change: ((column: string, role: ColumnRole | null) => void) | null;
}

export function ColumnTable({ file, columns, sample, change }: ColumnTableProps) {
  return (
    <div class="sample">
      <Table
        caption={`The first rows of ${file}, and what its columns are taken for`}
        rows={sample}
        keyOf={({ line }) => line}
        columns={[
          { head: 'Line', cell: ({ line }) => <span class="lesser">{line}</span> },
          ...columns.map((column, at) => ({
            head: <Head column={column} columns={columns} change={change} />,
            cell: ({ cells }: Understood['sample'][number]) => cells[at] ?? '',
          })),
        ]}
      />
    </div>
  );
}

function Head({
  column: it,
  columns,
  change,
}: {
  readonly column: ColumnShown;
  readonly columns: readonly ColumnShown[];
  readonly change: ColumnTableProps['change'];
}) {
  const { column, role, notRead, unit } = it;
  const known = columnRoles.some((candidate) => candidate === role);
  return (
    <div class="column-head">
      <span class="column-name">{column}</span>
      {change === null ? (
        <strong>{role === null ? 'Not read' : roleName(role)}</strong>
      ) : (
        <select
          aria-label={`What “${column}” holds`}
          value={role ?? ''}
          onChange={({ currentTarget }) =>
            change(column, columnRoles.find((candidate) => candidate === currentTarget.value) ?? null)
          }
        >
          {role === null || canBeUnread(column, columns) ? <option value="">Not read</option> : null}
          {role === null || known ? null : <option value={role}>{roleName(role)}</option>}
          {columnRoles.map((candidate) => (
            <option key={candidate} value={candidate}>
              {roleName(candidate)}
            </option>
          ))}
        </select>
      )}
      <span class="lesser">
        {role === null
          ? notReadWords[notRead ?? 'unknown']
          : [unit, reasonWords(it)].filter(Boolean).join(', ')}
      </span>
    </div>
  );
}
