/** All rows of a log as numbers: the time of each as it is written, and the value of each column that is read. */
import { resized } from './growing.ts';
import type { Decimal } from './numbers.ts';
import type { Role } from './role.ts';
import type { DateShape, RowBatch } from './scan/index.ts';
import type { Stamp } from './stamp.ts';
import { type Stamps, shapeCode } from './stamps.ts';
import { type Faults, type OtherUnit, valueReader } from './values.ts';

export interface Rows extends Stamps {
  /** From 1 as an editor counts. */
  readonly line: Int32Array;
  /** 1 for a row whose cells cannot be told apart; it counts as one without a time. */
  readonly ragged: Uint8Array;
  /** Cells of the last row. */
  readonly lastWidth: number;
  /** Per role one value per row in SI; NaN where there is none. */
  readonly values: readonly Float64Array[];
  /** Per role what stood there in place of a reading. */
  readonly faults: readonly Faults[];
  /** Per role the cells in a unit of something else. */
  readonly otherUnits: readonly (OtherUnit | null)[];
}

export interface RowTable {
  /** Takes a row of cells in the order of the headers; `stamp` is null for one without a time. */
  addCells(row: readonly string[], stamp: Stamp | null, isRagged: boolean, line: number): void;
  /** Takes rows scanned for the columns of the roles, their dates of one shape. */
  addBatch(batch: RowBatch, shape: DateShape): void;
  /** What has come so far. */
  rows(): Rows;
}

/**
 * @param width    columns of the log
 * @param expected about how many rows will come
 */
export function rowTable(
  width: number,
  roles: readonly Role[],
  decimal: Decimal,
  expected: number,
): RowTable {
  const readers = roles.map((role) => valueReader(role, decimal));
  let count = 0;
  let size = Math.max(1024, expected);
  let lastWidth = width;
  let line = new Int32Array(size);
  let shape = new Uint8Array(size);
  let parts = new Int16Array(3 * size);
  let clock = new Float64Array(size);
  let offset = new Float64Array(size);
  let ragged = new Uint8Array(size);
  let values = roles.map(() => new Float64Array(size));

  function resize(length: number): void {
    size = length;
    line = resized(line, size);
    shape = resized(shape, size);
    parts = resized(parts, 3 * size);
    clock = resized(clock, size);
    offset = resized(offset, size);
    ragged = resized(ragged, size);
    values = values.map((column) => resized(column, size));
  }

  return {
    addCells(row, stamp, isRagged, ownLine) {
      if (count === size) resize(2 * size);
      const i = count++;
      lastWidth = row.length;
      line[i] = ownLine;
      ragged[i] = isRagged ? 1 : 0;
      shape[i] = stamp === null ? 0 : shapeCode(stamp.shape);
      clock[i] = stamp?.clock ?? Number.NaN;
      offset[i] = stamp?.offset ?? Number.NaN;
      if (stamp !== null) parts.set(stamp.parts, 3 * i);
      for (let c = 0; c < roles.length; c++) {
        const cell = row[roles[c].column.at] ?? '';
        values[c][i] = stamp === null ? Number.NaN : readers[c].ofCell(cell, ownLine);
      }
    },
    addBatch(batch, batchShape) {
      while (count + batch.count > size) resize(2 * size);
      const at = count;
      count += batch.count;
      lastWidth = width;
      line.set(batch.line.subarray(0, batch.count), at);
      shape.fill(shapeCode(batchShape), at, count);
      parts.set(batch.parts.subarray(0, 3 * batch.count), 3 * at);
      clock.set(batch.clock.subarray(0, batch.count), at);
      offset.set(batch.offset.subarray(0, batch.count), at);
      readers.forEach((reader, c) => {
        reader.ofNumbers(batch.values[c], batch.line, batch.count, values[c], at);
      });
    },
    rows() {
      resize(count);
      const faults = readers.map((reader) => reader.faults);
      const otherUnits = readers.map((reader) => reader.otherUnit());
      return { count, line, shape, parts, clock, offset, ragged, lastWidth, values, faults, otherUnits };
    },
  };
}
