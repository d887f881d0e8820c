/** A table whose head is printed again on every page, and whose rows are never split. */
import { type Content, html, type Markup } from './html.ts';

export interface Column<Row> {
  readonly head: string;
  readonly cell: (row: Row) => Content;
  readonly numeric?: boolean;
  /** Never on two lines. */
  readonly whole?: boolean;
}

interface Rows<Row> {
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  /** Rows that sum up. */
  readonly foot?: readonly Row[];
}

/** A table of no more rows stays on one page. */
const SHORT = 5;

/** Nothing without rows. The first column names the row. On a phone the table scrolls within itself. */
export function table<Row>({ caption, columns, rows, foot = [] }: Rows<Row>): Markup | null {
  if (rows.length === 0) return null;
  const row = (it: Row, strong: boolean) =>
    html`<tr${strong ? html` class="sum"` : null}>${columns.map(({ cell, ...kind }, i) =>
      i === 0
        ? html`<th scope="row"${classOf(kind)}>${cell(it)}</th>`
        : html`<td${classOf(kind)}>${cell(it)}</td>`,
    )}</tr>\n`;
  return html`<div class="${rows.length > SHORT ? 'table' : 'table short'}" role="region" aria-label="${caption}" tabindex="0"><table><caption>${caption}</caption><thead><tr>${columns.map(
    ({ head, numeric }) => html`<th scope="col"${numeric ? html` class="numeric"` : null}>${head}</th>`,
  )}</tr></thead><tbody>\n${rows.map((it) => row(it, false))}${foot.map((it) => row(it, true))}</tbody></table></div>\n`;
}

function classOf({
  numeric = false,
  whole = false,
}: Pick<Column<never>, 'numeric' | 'whole'>): Markup | null {
  const classes = [...(numeric ? ['numeric'] : []), ...(whole ? ['whole'] : [])];
  return classes.length === 0 ? null : html` class="${classes.join(' ')}"`;
}
