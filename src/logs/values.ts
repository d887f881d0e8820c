/** The values of one column in SI, what stands for a fault left out. */
import { type Decimal, readNumber, splitUnit } from './numbers.ts';
import { isPlausible } from './plausible.ts';
import type { Role } from './role.ts';
import { mark, newTally, type Tally } from './tally.ts';
import { nameOfUnit, toSI, type Unit } from './units.ts';

/** What a sensor writes in place of a reading, by the text or number that stood there. */
export type Faults = ReadonlyMap<string | number, Tally>;

export interface ValueReader {
  /** The value of a trimmed cell; NaN when it is empty or a fault. */
  ofCell(cell: string, line: number): number;
  /** The values of the first `count` numbers in the file's unit, from `at` on; NaN where there is none, or a fault. */
  ofNumbers(numbers: Float64Array, line: Int32Array, count: number, into: Float64Array, at: number): void;
  readonly faults: Faults;
  /** Cells whose own unit measures something else; null where there is none. */
  otherUnit(): OtherUnit | null;
}

export interface OtherUnit {
  /** The first of them. */
  readonly said: string;
  readonly tally: Tally;
}

export function valueReader({ unit, quantity }: Role, decimal: Decimal): ValueReader {
  const faults = new Map<string | number, Tally>();
  /** Texts that are no number and no known mark count together, under the first of them. */
  let firstOddText: string | undefined;
  let otherUnit: OtherUnit | null = null;
  const fault = (what: string | number, line: number) => {
    const tally = faults.get(what) ?? newTally();
    faults.set(what, tally);
    mark(tally, line);
    return Number.NaN;
  };
  const inUnit = (number: number, own: Unit, line: number) => {
    const value = toSI(number, own);
    return FAULT_NUMBERS.has(number) && !isPlausible(quantity, value) ? fault(number, line) : value;
  };
  return {
    ofCell(cell, line) {
      if (cell === '') return Number.NaN;
      const number = readNumber(cell, decimal);
      if (Number.isNaN(number)) {
        if (!isMark(cell)) firstOddText ??= cell;
        return fault(isMark(cell) ? cell : (firstOddText ?? cell), line);
      }
      const own = /[\d.,]$/.test(cell) ? undefined : splitUnit(cell)?.unit;
      if (own === undefined || measuresSame(own, unit))
        return inUnit(number, own?.measures === unit.measures ? own : unit, line);
      otherUnit ??= { said: cell, tally: newTally() };
      mark(otherUnit.tally, line);
      return Number.NaN;
    },
    ofNumbers(numbers, line, count, into, at) {
      const { scale, shift } = unit;
      for (let i = 0; i < count; i++) {
        const number = numbers[i];
        into[at + i] = isFar(number) ? inUnit(number, unit, line[i]) : (number + shift) * scale;
      }
    },
    faults,
    otherUnit: () => otherUnit,
  };
}

/** Cubic metres belong to a meter whose unit the house alone knows. */
const measuresSame = (own: Unit, unit: Unit) =>
  own.measures === unit.measures || (own.measures === 'volume' && nameOfUnit(unit) === null);

/** Numbers that loggers write for "no reading"; each counts only where the quantity cannot take it. */
const FAULT_NUMBERS: ReadonlySet<number> = new Set([
  -99, -99.9, -99.99, -127, -999, -999.9, -999.99, -9999, -9999.9, -32768, -3276.8, -327.68, 99.99, 999,
  999.9, 999.99, 9999, 9999.9, 99999, 32767, 3276.7, 327.67, 65535, 6553.5, 655.35,
]);

/** All of them are: asked first, because nearly no reading is. */
const isFar = (number: number) => number <= -99 || number >= 99.99;

/** A text that says "no reading". */
const isMark = (cell: string) =>
  /^(-+|\*+|\?+|n\/?an?|#n\/?a!?|null|none|nil|err(or)?|fault|fail(ed)?|ol|o\.?l\.?|ovl|over|under|inf|open|short|missing|offline)$/i.test(
    cell,
  );
