/** The columns of a file as they are shown: what each is taken for, in which unit, why, and how surely. */
import type { Imported } from '../../src/assessment.ts';
import { quantities } from '../parts/quantities.ts';
import { type ColumnRole, columnRoles, type Placement } from './draft.ts';

export type Understood = NonNullable<Imported['understood']>;
type Found = Understood['columns'][number];
type Quantity = NonNullable<Found['quantity']>;
type Confidence = NonNullable<Found['confidence']>;

export interface ColumnShown {
  readonly column: string;
  /** What it is taken for; null where it is not read. */
  readonly role: ColumnRole | Quantity | null;
  /** What it was taken for before anyone said. */
  readonly guessed: ColumnRole | Quantity | null;
  /** What it is where it is not read. */
  readonly notRead: Found['notRead'];
  /** As it is written; null where there is none. */
  readonly unit: string | null;
  readonly because: readonly Found['because'][number][];
  readonly confidence: Confidence | null;
}

/**
 * @param now        as the file was understood last
 * @param first      as it was understood before anything was answered for it
 * @param placements of the file: what they name goes before what was guessed
 */
export function columnsShown(
  now: Understood,
  first: Understood,
  placements: readonly Placement[],
): ColumnShown[] {
  return now.columns.map((column, at) => {
    const before = first.columns[at] ?? column;
    const guessed = roleOf(before, first);
    const said = placements.flatMap(({ columns }) =>
      columnRoles.filter((role) => columns[role] === column.column),
    )[0];
    const role = said ?? roleOf(column, now);
    // what the page itself wrote into house.json for a guess remains a guess
    const { because, confidence } = said !== undefined && said === guessed ? before : column;
    const unit = [column, before].find(({ quantity }) => quantity === role)?.unit ?? null;
    const bySay: ColumnShown['because'] =
      because.length === 0 && said !== undefined ? ['the house'] : because;
    return {
      column: column.column,
      role,
      guessed,
      notRead: role === null ? (column.notRead ?? before.notRead ?? 'unknown') : null,
      unit: unit === null ? null : unitWritten(unit),
      because: bySay,
      confidence: confidence ?? (bySay.length === 0 ? null : 'certain'),
    };
  });
}

/** Whether house.json can say that a column is not read: by another one for what it seems to hold. */
export function canBeUnread(column: string, shown: readonly ColumnShown[]): boolean {
  const it = shown.find((candidate) => candidate.column === column);
  if (it === undefined || it.guessed === null || it.guessed !== it.role) return true;
  return shown.some((other) => other !== it && other.role === it.role);
}

/** "header and unit say so: sure" */
export function reasonWords({ because, confidence, role }: ColumnShown): string {
  if (role === null || confidence === null) return '';
  const [first, second] = because.filter((it) => it !== 'the house');
  const words = because.includes('the house')
    ? 'as answered'
    : first === undefined
      ? 'by its place'
      : `by ${first}${second === undefined ? '' : ` and ${second}`}`;
  return `${words}: ${confidenceWords[confidence]}`;
}

export const confidenceWords: Readonly<Record<Confidence, string>> = {
  certain: 'sure',
  likely: 'likely',
  guessed: 'a guess',
};

export const notReadWords: Readonly<Record<NonNullable<Found['notRead']>, string>> = {
  time: 'the time',
  event: 'an event',
  counter: 'a row number',
  statistic: 'a minimum, maximum or limit',
  text: 'text',
  empty: 'empty',
  unknown: 'nothing known',
};

/** What a role is called in a list of choices. */
export const roleName = (role: ColumnRole | Quantity): string =>
  role === 'time'
    ? 'Time'
    : role === 'date'
      ? 'Date, apart from the time'
      : role === 'energy'
        ? 'Energy per interval'
        : role === 'meter'
          ? 'Running meter'
          : quantities[role].title;

const roleOf = ({ column, quantity, notRead }: Found, { clock }: Understood): ColumnShown['role'] =>
  quantity ??
  (notRead === 'time'
    ? clock.columns.indexOf(column) < 1 && clock.columns.length > 1
      ? 'date'
      : 'time'
    : null);

/** "C" as "°C", "W/m2" as "W/m²". */
export const unitWritten = (unit: string): string =>
  /^[CF]$/.test(unit) ? `°${unit}` : unit.replace(/m2\b/g, 'm²').replace(/m3\b/g, 'm³');
