/** Which mark stands before the decimals: that of a whole file, weighed where "1,234" could be either. */
import type { Quantity } from '../assessment.ts';
import { quantityNamed, unitsNamed } from './names.ts';
import { type Decimal, GROUPED, PLAIN, splitUnit, ungrouped, withMinus } from './numbers.ts';
import type { Delimiter } from './table.ts';
import { type Measure, unitNamed } from './units.ts';

export interface DecimalMark {
  readonly decimal: Decimal;
  /** Nothing in the file tells it from a mark between thousands. */
  readonly guessed: boolean;
}

/** A column's header, what its row of units says, and cells of it. */
export interface Cells {
  readonly header: string;
  readonly below: string;
  readonly cells: readonly string[];
}

/**
 * By the cells that can be read in one way only. Where every marked number has exactly three digits behind its mark:
 * decimals in a column that never reaches a thousand or has thousands without a mark; thousands where the cells had
 * to be quoted because of the mark, or beside whole numbers from 100 on; else decimals, guessed.
 */
export function decimalOf(columns: readonly Cells[], delimiter: Delimiter): DecimalMark {
  const written = columns.map(writingOf);
  const count = (tell: (column: Writing) => number) => written.reduce((sum, it) => sum + tell(it), 0);
  const point = count(({ sure }) => sure['.']);
  const comma = count(({ sure }) => sure[',']);
  const openPoint = count(({ open }) => open['.']);
  const openComma = count(({ open }) => open[',']);
  const known = comma > point ? ',' : '.';
  // a stray cell does not speak for a whole file
  const against = known === ',' ? openPoint : openComma;
  if (Math.max(point, comma) * STRAY > against) return { decimal: known, guessed: false };
  if (openPoint === 0 && openComma === 0) return { decimal: '.', guessed: false };

  const small = written.filter(({ isSmall }) => isSmall);
  for (const mark of [',', '.'] as const)
    if (small.some(({ open }) => open[mark] > 0 && open[OTHER[mark]] === 0))
      return { decimal: mark, guessed: false };
  if (openPoint > 0 && openComma > 0) return { decimal: '.', guessed: true };
  const mark = openComma > 0 ? ',' : '.';
  const marked = written.filter(({ open }) => open[mark] > 0);
  if (marked.some(({ largestWhole }) => largestWhole >= 1000)) return { decimal: mark, guessed: false };
  if (delimiter === mark || marked.some(({ largestWhole }) => largestWhole >= 100))
    return { decimal: OTHER[mark], guessed: false };
  // a logger that writes three decimals with a point is nothing to ask about, unless it leaves them out at times
  return {
    decimal: mark,
    guessed: mark === ',' || marked.some(({ largestWhole }) => largestWhole >= 0),
  };
}

const OTHER = { '.': ',', ',': '.' } as const;
/** One cell that is sure outweighs so many that are open. */
const STRAY = 10;

/** How the numbers of one column are written. */
interface Writing {
  /** Cells that speak for a decimal mark. */
  readonly sure: Record<Decimal, number>;
  /** Cells of a mark with three digits behind it, which may stand between thousands. */
  readonly open: Record<Decimal, number>;
  /** Of the numbers without a mark; -1 where there is none. */
  readonly largestWhole: number;
  /** Holds what never reaches a thousand. */
  readonly isSmall: boolean;
}

function writingOf({ header, below, cells }: Cells): Writing {
  const sure = { '.': 0, ',': 0 };
  const open = { '.': 0, ',': 0 };
  let largestWhole = -1;
  for (const cell of cells) {
    const signed = withMinus(cell);
    const number = ungrouped(splitUnit(signed)?.number ?? signed);
    const either = /^[-+]?[1-9]\d{0,2}([.,])\d{3}$/.exec(number)?.[1];
    if (either === '.' || either === ',') open[either]++;
    else if (/^\d+$/.test(number)) largestWhole = Math.max(largestWhole, Number(number));
    else if (number.includes('.') && PLAIN['.'].test(number)) sure['.']++;
    else if (number.includes(',') && PLAIN[','].test(number)) sure[',']++;
    else if (GROUPED['.'].test(number)) sure['.']++;
    else if (GROUPED[','].test(number)) sure[',']++;
  }
  return { sure, open, largestWhole, isSmall: isSmall(header, below, cells) };
}

/** By its header, by the row of units, or by a unit stuck to its cells. */
function isSmall(header: string, below: string, cells: readonly string[]): boolean {
  const named = quantityNamed(header);
  if (named !== undefined && named !== null && SMALL.has(named)) return true;
  const stuck = cells.map((cell) => splitUnit(withMinus(cell))?.unit).find((unit) => unit !== undefined);
  const over = unitsNamed(header).flatMap(({ unit, sure }) => (sure ? [unit] : []));
  return [stuck, unitNamed(below), ...over].some(
    (unit) => unit !== undefined && SMALL_UNITS.has(unit.measures),
  );
}

const SMALL: ReadonlySet<Quantity> = new Set([
  'temperature',
  'dewPoint',
  'humidity',
  'absoluteHumidity',
  'windSpeed',
]);
const SMALL_UNITS: ReadonlySet<Measure> = new Set(['temperature', 'humidity', 'vapour', 'speed']);
