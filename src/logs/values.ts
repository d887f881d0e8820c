/** The values of one column in SI, what stands for a fault left out. */
import type { Layout } from './layout.ts';
import { type Decimal, readNumber, splitUnit } from './numbers.ts';
import { isPlausible } from './plausible.ts';
import type { Role } from './role.ts';
import { mark, newTally, type Tally } from './tally.ts';
import { toSI, type Unit } from './units.ts';

export interface Values {
  /** One per row, NaN where there is none. */
  readonly values: Float64Array;
  /** What was left out, by the text or number that stood there. */
  readonly faults: Map<string | number, Tally>;
}

/** @param instants time of each row; a row without one is not looked at */
export function readValues(
  { rows, lines }: Layout,
  instants: Float64Array,
  { unit, quantity, column }: Role,
  decimal: Decimal,
): Values {
  const values = new Float64Array(rows.length).fill(Number.NaN);
  const faults = new Map<string | number, Tally>();
  /** Texts that are no number and no known mark count together, under the first of them. */
  let firstOddText: string | undefined;
  const fault = (what: string | number, i: number) => {
    const tally = faults.get(what) ?? newTally();
    faults.set(what, tally);
    mark(tally, lines[i]);
    values[i] = Number.NaN;
  };
  rows.forEach((row, i) => {
    const cell = row[column.at] ?? '';
    if (cell === '' || Number.isNaN(instants[i])) return;
    const number = readNumber(cell, decimal);
    if (Number.isNaN(number)) {
      if (!isMark(cell)) firstOddText ??= cell;
      fault(isMark(cell) ? cell : (firstOddText ?? cell), i);
      return;
    }
    const own = /[\d.,]$/.test(cell) ? undefined : splitUnit(cell)?.unit;
    const value = toSI(number, own?.measures === unit.measures ? own : unit);
    if (FAULT_NUMBERS.has(number) && !isPlausible(quantity, value)) fault(number, i);
    else values[i] = value;
  });
  if (quantity === 'temperature') for (const i of powerOnValues(values)) fault(POWER_ON, i);
  return { values, faults };
}

/** Nothing but zeros, as the file has them. */
export function isAllZero(values: Float64Array, unit: Unit): boolean {
  const zero = toSI(0, unit);
  return (
    values.some((value) => value === zero) && values.every((value) => value === zero || Number.isNaN(value))
  );
}

/** Numbers that loggers write for "no reading"; each counts only where the quantity cannot take it. */
const FAULT_NUMBERS: ReadonlySet<number> = new Set([
  -99, -99.9, -99.99, -127, -999, -999.9, -999.99, -9999, -9999.9, -32768, -3276.8, -327.68, 99.99, 999,
  999.9, 999.99, 9999, 9999.9, 99999, 32767, 3276.7, 327.67, 65535, 6553.5, 655.35,
]);

/** What a common digital thermometer gives before its first conversion [°C]. */
const POWER_ON = 85;

/** A text that says "no reading". */
const isMark = (cell: string) =>
  /^(-+|\*+|\?+|n\/?an?|#n\/?a!?|null|none|nil|err(or)?|fault|fail(ed)?|ol|o\.?l\.?|ovl|over|under|inf|open|short|missing|offline)$/i.test(
    cell,
  );

/** Rows at exactly 85 °C, where all other readings stay more than 30 K below. */
function powerOnValues(values: Float64Array): number[] {
  const at: number[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  values.forEach((value, i) => {
    if (Math.abs(value - POWER_ON) < 1e-9) at.push(i);
    else if (value > highest) highest = value;
  });
  return highest < POWER_ON - 30 && highest > Number.NEGATIVE_INFINITY ? at : [];
}
