/** What a person answers to a file's guesses -> the form. An answer is of the file and so of all its placements. */
import type { ReadingAnswers } from '../../server/api/shapes.ts';
import { type ColumnShown, canBeUnread } from './columns.ts';
import {
  type ColumnRole,
  type Columns,
  columnRoles,
  filesOf,
  type HouseDraft,
  type Placement,
  type Read,
  sectionOf,
} from './draft.ts';

export const placementsOf = (file: string, { placements }: HouseDraft): readonly Placement[] =>
  placements.filter((placement) => filesOf(placement).includes(file));

/** Changes one placement, known by what it was. */
export const withPlacement = (draft: HouseDraft, was: Placement, is: Partial<Placement>): HouseDraft => ({
  ...draft,
  placements: draft.placements.map((placement) => (placement === was ? { ...placement, ...is } : placement)),
});

/** Changes what holds for a file wherever it is placed. */
export const withFile = (
  draft: HouseDraft,
  file: string,
  change: Partial<Pick<Placement, 'timeZone' | 'clockOffset'>>,
): HouseDraft => ofFile(draft, file, (placement) => ({ ...placement, ...change }));

/** Answers what a file does not say; undefined takes an answer back. */
export const withRead = (draft: HouseDraft, file: string, read: Read): HouseDraft =>
  ofFile(draft, file, (placement) => ({
    ...placement,
    read: withoutUndefined({ ...placement.read, ...read }),
  }));

/** A file of a layout that was once answered for has the same answers, until the person has it otherwise. */
export const withRemembered = (placement: Placement, remembered: ReadingAnswers): Placement => ({
  ...placement,
  columns: { ...remembered.columns, ...placement.columns },
  timeZone: remembered.timeZone ?? '',
  clockOffset: remembered.clockOffsetMin === undefined ? '' : String(remembered.clockOffsetMin),
  read: remembered.read ?? {},
});

/**
 * Says what a column holds. Another thermometer in a file is another logger, placed by itself; a thermometer that is
 * none any more takes its logger with it, unless it is the file's only one.
 *
 * @param role  null for "not read"
 * @param shown all columns of the file as they are shown
 */
export function withColumn(
  draft: HouseDraft,
  file: string,
  column: string,
  role: ColumnRole | null,
  shown: readonly ColumnShown[],
): HouseDraft {
  if (role === null && !canBeUnread(column, shown)) return draft;
  const loggers = placementsOf(file, draft).filter(({ place }) => sectionOf(place) === 'loggers');
  const freed = ofFile(without(draft, loggers, column), file, (placement) => ({
    ...placement,
    columns: withoutColumn(placement.columns, column),
  }));
  if (role === null) return withOthersNamed(freed, file, column, shown);
  if (role !== 'temperature' || loggers.length === 0) return named(freed, file, column, role, shown);
  const others = shown.filter((it) => it.role === 'temperature' && it.column !== column);
  if (others.length === 0) return named(freed, file, column, role, shown);
  const explicit = ofFile(freed, file, (placement) =>
    placement.columns.temperature === undefined && sectionOf(placement.place) === 'loggers'
      ? { ...placement, columns: { ...placement.columns, temperature: others[0].column } }
      : placement,
  );
  const model = placementsOf(file, explicit)[0];
  const columns = { temperature: column };
  const added: Placement = { ...model, room: '', volume: '', element: '', columns, rest: null };
  return { ...explicit, placements: [...explicit.placements, added] };
}

/** The logger whose thermometer a column was, where the file has others. */
function without(draft: HouseDraft, loggers: readonly Placement[], column: string): HouseDraft {
  if (loggers.length < 2) return draft;
  const gone = loggers.filter(({ columns }) => columns.temperature === column);
  return { ...draft, placements: draft.placements.filter((placement) => !gone.includes(placement)) };
}

/** Names the column wherever it is of use; humidity belongs to the thermometer before it. */
function named(
  draft: HouseDraft,
  file: string,
  column: string,
  role: ColumnRole,
  shown: readonly ColumnShown[],
): HouseDraft {
  const placements = placementsOf(file, draft);
  const owner = role === 'humidity' ? ownerOf(column, placements, shown) : null;
  return ofFile(draft, file, (placement) =>
    owner === null || placement === owner
      ? { ...placement, columns: { ...placement.columns, [role]: column } }
      : placement,
  );
}

function ownerOf(
  column: string,
  placements: readonly Placement[],
  shown: readonly ColumnShown[],
): Placement | null {
  const names = shown.map((it) => it.column);
  const before = placements.filter(
    ({ columns }) =>
      columns.temperature !== undefined && names.indexOf(columns.temperature) < names.indexOf(column),
  );
  return before.at(-1) ?? null;
}

/** A column is not read when another one is named for what it seemed to hold. */
function withOthersNamed(
  draft: HouseDraft,
  file: string,
  column: string,
  shown: readonly ColumnShown[],
): HouseDraft {
  const seemed = shown.find((it) => it.column === column)?.guessed;
  const role = columnRoles.find((it) => it === seemed);
  const other = shown.find((it) => it.column !== column && it.role === seemed);
  if (role === undefined || other === undefined) return draft;
  return ofFile(draft, file, (placement) =>
    placement.columns[role] === undefined
      ? { ...placement, columns: { ...placement.columns, [role]: other.column } }
      : placement,
  );
}

function ofFile(draft: HouseDraft, file: string, change: (placement: Placement) => Placement): HouseDraft {
  return {
    ...draft,
    placements: draft.placements.map((it) => (filesOf(it).includes(file) ? change(it) : it)),
  };
}

const withoutColumn = (columns: Columns, column: string): Columns =>
  Object.fromEntries(Object.entries(columns).filter(([, name]) => name !== column));

const withoutUndefined = (read: Read): Read =>
  Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined));
