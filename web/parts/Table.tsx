/** A real table; on a phone it scrolls inside its own frame. The first column names the row. */
import type { ComponentChildren } from 'preact';
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
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section class="table" aria-label={caption} tabIndex={0}>
      <table>
        <caption>
          <span>{caption}</span>
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
