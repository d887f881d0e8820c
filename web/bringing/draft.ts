/** A house.json as a form has it: what was typed, field by field, and beside it all that the form does not know. */

export interface HouseDraft {
  readonly name: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly timeZone: string;
  /** [m²] */
  readonly floorArea: string;
  /** [m³] */
  readonly volume: string;
  readonly placements: readonly Placement[];
  /** Heat that was read by eye and stands in no file: as it was brought. */
  readonly heatByHand: readonly JsonObject[];
  /** The other keys of house.json: as they were brought. */
  readonly rest: JsonObject;
}

/** One use of a file: a logger where it hung, a weather station, a heat meter. A file may have several. */
export interface Placement {
  readonly file: string;
  /** Later exports of the same logger; of two the one named first is believed. */
  readonly continuedIn: readonly string[];
  readonly place: Place;
  readonly room: string;
  /** [m³] */
  readonly volume: string;
  /** The element of the design that it belongs to; empty where that is not said. */
  readonly element: string;
  readonly columns: Columns;
  /** Of the file's clock; empty for what the file says, else the house's. */
  readonly timeZone: string;
  /** [min] */
  readonly clockOffset: string;
  readonly read: Read;
  /** The other keys of its entry, and the list of house.json in which they mean something. */
  readonly rest: { readonly section: Section; readonly keys: JsonObject } | null;
  /** What spoke for the place, until the person has it their way. */
  readonly guess: Guess | null;
}

export type JsonObject = Readonly<Record<string, unknown>>;
export type Section = 'loggers' | 'weather' | 'heat';
export type Guess = 'name' | 'columns' | 'values' | 'nothing';

export const columnRoles = [
  'time',
  'date',
  'temperature',
  'humidity',
  'windSpeed',
  'irradiance',
  'power',
  'energy',
  'meter',
] as const;
export type ColumnRole = (typeof columnRoles)[number];
export type Columns = Readonly<Partial<Record<ColumnRole, string>>>;

export interface Read {
  readonly dateOrder?: 'day-first' | 'month-first' | 'year-first' | undefined;
  readonly decimal?: '.' | ',' | undefined;
  readonly unit?: 'C' | 'F' | 'K' | undefined;
  readonly serialFrom?: 1900 | 1904 | undefined;
  readonly stamp?: 'start' | 'end' | undefined;
}

export const loggerPlaces = ['inside', 'outside', 'void', 'surface', 'adjacent'] as const;
export const heatKinds = ['power', 'energy', 'meter'] as const;
export const places = [...loggerPlaces, 'weather', ...heatKinds, 'left out'] as const;
export type Place = (typeof places)[number];

/** The list of house.json that a place belongs to; null for what is left out of it. */
export function sectionOf(place: Place): Section | null {
  if (place === 'left out') return null;
  if (place === 'weather') return 'weather';
  return heatKinds.some((kind) => kind === place) ? 'heat' : 'loggers';
}

export const emptyDraft: HouseDraft = {
  name: '',
  latitude: '',
  longitude: '',
  timeZone: '',
  floorArea: '',
  volume: '',
  placements: [],
  heatByHand: [],
  rest: {},
};

export const newPlacement = (file: string, place: Place, guess: Guess | null = null): Placement => ({
  file,
  continuedIn: [],
  place,
  room: '',
  volume: '',
  element: '',
  columns: {},
  timeZone: '',
  clockOffset: '',
  read: {},
  rest: null,
  guess,
});

/** Where a logger tells of one element of the shell. */
export const atElement = (place: Place): place is 'void' | 'surface' | 'adjacent' =>
  place === 'void' || place === 'surface' || place === 'adjacent';

/**
 * The elements of the design, by name: the form does not know them otherwise. Before them the one that was said, where
 * the design has none of that name: a choice shows what it holds, so that it can be put right.
 */
export function elementNames({ rest: { elements } }: HouseDraft, said: string): readonly string[] {
  const all: readonly ({ name?: unknown } | null)[] = Array.isArray(elements) ? elements : [];
  const drawn = all.flatMap((it) => (typeof it?.name === 'string' ? [it.name] : []));
  return said === '' || drawn.includes(said) ? drawn : [said, ...drawn];
}

/** All files that a placement draws on. */
export const filesOf = ({ file, continuedIn }: Placement): readonly string[] => [file, ...continuedIn];
