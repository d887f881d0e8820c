/** The form -> house.json. */
import { rewritten } from '../../src/houseText.ts';
import { type HouseDraft, type JsonObject, type Placement, type Section, sectionOf } from './draft.ts';

/**
 * The text of house.json; until the house has a name it gets one that says so, so that the rest can be tried.
 *
 * @param written what it was before: all that stays of it is left as it stands there
 */
export function houseJsonOf(draft: HouseDraft, written?: string): string {
  const name = draft.name.trim() === '' ? 'A house without a name yet' : draft.name;
  const house = houseOf({ ...draft, name });
  return written === undefined ? `${JSON.stringify(house, null, 2)}\n` : rewritten(written, house);
}

/** What house.json holds; what was typed as a number and is none stays a text, for the schema to say so. */
export function houseOf(draft: HouseDraft): JsonObject {
  const heat = [...entriesIn('heat', draft), ...draft.heatByHand];
  return withoutUndefined({
    name: draft.name,
    location: {
      latitude: numberIn(draft.latitude) ?? '',
      longitude: numberIn(draft.longitude) ?? '',
      timeZone: draft.timeZone,
    },
    floorAreaM2: numberIn(draft.floorArea),
    volumeM3: numberIn(draft.volume),
    loggers: entriesIn('loggers', draft),
    weather: orNothing(entriesIn('weather', draft)),
    heat: orNothing(heat),
    ...draft.rest,
  });
}

/** The placements of one list of house.json, in its order. */
export const placedIn = (section: Section, { placements }: HouseDraft): readonly Placement[] =>
  placements.filter(({ place }) => sectionOf(place) === section);

const entriesIn = (section: Section, draft: HouseDraft): JsonObject[] =>
  placedIn(section, draft).map((placement) => entryOf(placement, section));

function entryOf(placement: Placement, section: Section): JsonObject {
  const { file, continuedIn, place, room, volume, element, columns, timeZone, clockOffset, read, rest } =
    placement;
  const own =
    section === 'loggers'
      ? {
          place,
          room: orUndefined(room),
          volumeM3: numberIn(volume),
          element: orUndefined(element),
        }
      : section === 'heat'
        ? { kind: place }
        : {};
  return withoutUndefined({
    file,
    ...own,
    continuedIn: orNothing(continuedIn),
    columns: orUndefined(withoutUndefined(columns)),
    timeZone: orUndefined(timeZone),
    clockOffsetMin: numberIn(clockOffset),
    read: orUndefined(withoutUndefined(read)),
    ...(rest?.section === section ? rest.keys : {}),
  });
}

/** What was typed, with a comma or a point; undefined for nothing, the text itself where it is no number. */
function numberIn(text: string): number | string | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  if (plain === '') return undefined;
  const value = Number(plain);
  return Number.isFinite(value) ? value : text;
}

const withoutUndefined = (object: object): JsonObject =>
  Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined));

const orNothing = <T>(list: readonly T[]) => (list.length === 0 ? undefined : list);

const orUndefined = <T extends string | object>(value: T): T | undefined =>
  (typeof value === 'string' ? value.trim() === '' : Object.keys(value).length === 0) ? undefined : value;
