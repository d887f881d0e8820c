/** Where the rows go: the plain ones by the batch, the others one by one. */

export interface RowSink {
  /** Plain rows in the order of the file. The arrays are filled again for the next ones: copy what is kept. */
  rows(batch: RowBatch): void;
  /**
   * A row that is not plain, for the general reader: comments, headers, units rows, faults, other widths.
   *
   * @param from its first byte
   * @param to   its line break, or the end of the file
   * @param line its line
   * @returns where the row really ends: `to`, or a later line break (or end of the file) when a quoted cell holds
   *          line breaks; the end of the file stops the scan
   */
  odd(from: number, to: number, line: number): number;
}

/** Some rows of a file, the first `count` entries of each array. */
export interface RowBatch {
  count: number;
  /** The line of each row, from 1 as an editor counts. */
  readonly line: Int32Array;
  /** The three numbers of each date in the order of the text, not judged: 3 per row. An epoch has 1970, 1, 1. */
  readonly parts: Int16Array;
  /** Seconds since the day began, up to 86400; of an epoch the whole of it. */
  readonly clock: Float64Array;
  /** Offset from UTC that the row states [s]; NaN where it states none. */
  readonly offset: Float64Array;
  /** Per wanted column the numbers as the file has them; NaN for an empty cell. */
  readonly values: readonly Float64Array[];
}

export const newBatch = (rows: number, columns: number): RowBatch => ({
  count: 0,
  line: new Int32Array(rows),
  parts: new Int16Array(3 * rows),
  clock: new Float64Array(rows),
  offset: new Float64Array(rows),
  values: Array.from({ length: columns }, () => new Float64Array(rows)),
});
