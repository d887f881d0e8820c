/** One column that may be read: its name, the units it may be in, a sample of its numbers. */
import { unitsNamed } from './names.ts';
import { type Decimal, readNumber, splitUnit } from './numbers.ts';
import { type Unit, unitNamed } from './units.ts';

export interface Column {
  readonly at: number;
  /** The header as the file has it, or "column 3". */
  readonly name: string;
  readonly hasHeader: boolean;
  /** The units that cells, units row and header name, the likeliest first; `sure` when it can be nothing else. */
  readonly units: readonly { readonly unit: Unit; readonly sure: boolean }[];
  /** Numbers from a sample of its rows, in the file's unit. */
  readonly numbers: readonly number[];
}

/** What the columns are called: by their headers, else by their place; the second of one name is "name (2)". */
export function namesOf(headers: readonly string[]): string[] {
  const met = new Map<string, number>();
  return headers.map((header, at) => {
    if (header === '') return `column ${at + 1}`;
    const times = (met.get(header) ?? 0) + 1;
    met.set(header, times);
    return times === 1 ? header : `${header} (${times})`;
  });
}

/** The columns that hold numbers, those of the time left out. */
export function columnsOf(
  headers: readonly string[],
  unitsRow: readonly string[],
  sample: readonly (readonly string[])[],
  decimal: Decimal,
  times: readonly number[],
): Column[] {
  return namesOf(headers).flatMap((name, at) => {
    if (times.includes(at)) return [];
    const hasHeader = headers[at] !== '';
    const cells = sample.map((row) => row[at] ?? '').filter((cell) => cell !== '');
    const numbers = cells.map((cell) => readNumber(cell, decimal)).filter((number) => !Number.isNaN(number));
    if (numbers.length === 0) return [];
    const stuck = mostFrequent(cells.flatMap((cell) => splitUnit(cell)?.unit ?? []));
    const below = unitNamed((unitsRow[at] ?? '').replace(/^[[(]|[\])]$/g, ''));
    const sure = [stuck, below].flatMap((unit) => (unit === undefined ? [] : [{ unit, sure: true }]));
    return [{ at, name, hasHeader, units: [...sure, ...(hasHeader ? unitsNamed(name) : [])], numbers }];
  });
}

/** Of several as frequent ones the first. */
function mostFrequent(units: readonly Unit[]): Unit | undefined {
  const times = new Map<Unit, number>();
  for (const unit of units) times.set(unit, (times.get(unit) ?? 0) + 1);
  const most = Math.max(...times.values());
  return units.find((unit) => times.get(unit) === most);
}
