/**
 * A real table. Where it is wider than its frame it slides inside it, says so in words and by a shade at its edge, and
 * can be reached by the keyboard; the first column, which names the row, stays.
 */
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { useSideways } from './useSideways.ts';
import './Table.css';

export interface Column<Row> {
  readonly head: ComponentChildren;
  readonly cell: (row: Row) => ComponentChildren;
  /** Figures stand to the right, one under the other. */
  readonly numeric?: boolean;
}

export interface TableProps<Row> {
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string | number;
  /** Rows that sum up, set off by a line. */
  readonly foot?: readonly Row[];
}

export function Table<Row>({ caption, columns, rows, keyOf, foot = [] }: TableProps<Row>) {
  const frame = useRef<HTMLElement>(null);
  const sideways = useSideways(frame);
  const line = (row: Row) => (
    <tr key={keyOf(row)}>
      {columns.map(({ cell, numeric }, i) => {
        const look = numeric ? 'numeric' : undefined;
        return i === 0 ? (
          <th key={i} scope="row" class={look}>
            {cell(row)}
          </th>
        ) : (
          <td key={i} class={look}>
            {cell(row)}
          </td>
        );
      })}
    </tr>
  );
  return (
    <section
      ref={frame}
      class={sideways === 'fits' ? 'table' : 'table table-wide'}
      aria-label={caption}
      // What slides must be reached by the keyboard.
      {...(sideways === 'fits' ? {} : { tabIndex: 0 })}
    >
      <table>
        <caption>
          <span>
            {caption}
            {sideways === 'fits' ? null : (
              <span class="table-hint" aria-hidden="true">
                {sideways === 'more' ? 'Slide sideways for the rest →' : '← Slide back for the beginning'}
              </span>
            )}
          </span>
        </caption>
        <thead>
          <tr>
            {columns.map(({ head, numeric }, i) => (
              <th key={i} scope="col" class={numeric ? 'numeric' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{rows.map(line)}</tbody>
        {foot.length > 0 ? <tfoot>{foot.map(line)}</tfoot> : null}
      </table>
    </section>
  );
}
