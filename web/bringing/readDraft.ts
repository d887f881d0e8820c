/** house.json -> the form. */
import {
  type Columns,
  columnRoles,
  type HouseDraft,
  heatKinds,
  type JsonObject,
  loggerPlaces,
  newPlacement,
  type Place,
  type Placement,
  type Read,
  type Section,
} from './draft.ts';

/** The form filled from a house.json, whether or not it is valid; null where no form can be made of it. */
export function draftOf(text: string): HouseDraft | null {
  try {
    const house: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    return isObject(house) ? draftOfHouse(house) : null;
  } catch {
    return null;
  }
}

export function draftOfHouse(house: JsonObject): HouseDraft | null {
  const { name, location, floorAreaM2, volumeM3, loggers, weather, heat, ...rest } = house;
  const lists = [loggers, weather, heat].map(objectsIn);
  const [loggerEntries, weatherEntries, heatEntries] = lists;
  if (!loggerEntries || !weatherEntries || !heatEntries) return null;
  const at = isObject(location) ? location : {};
  const placed = (section: Section, entries: readonly JsonObject[]) =>
    entries.map((entry) => placementOf(entry, section));
  return {
    name: textOf(name),
    latitude: textOf(at.latitude),
    longitude: textOf(at.longitude),
    timeZone: textOf(at.timeZone),
    floorArea: textOf(floorAreaM2),
    volume: textOf(volumeM3),
    placements: [
      ...placed('loggers', loggerEntries),
      ...placed('weather', weatherEntries),
      ...placed(
        'heat',
        heatEntries.filter(({ file }) => file !== undefined),
      ),
    ],
    heatByHand: heatEntries.filter(({ file }) => file === undefined),
    rest,
  };
}

/** The keys of an entry that only its own list has and that the form knows. */
const ownKeys: Readonly<Record<Section, readonly string[]>> = {
  loggers: ['place', 'room', 'volumeM3', 'element'],
  weather: [],
  heat: ['kind'],
};

function placementOf(entry: JsonObject, section: Section): Placement {
  const { file, continuedIn, columns, timeZone, clockOffsetMin, read, ...others } = entry;
  const unknown = Object.entries(others).filter(([key]) => !ownKeys[section].includes(key));
  const isLogger = section === 'loggers';
  return {
    ...newPlacement(textOf(file), placeOf(section, entry.place, entry.kind)),
    room: isLogger ? textOf(entry.room) : '',
    volume: isLogger ? textOf(entry.volumeM3) : '',
    element: isLogger ? textOf(entry.element) : '',
    continuedIn: Array.isArray(continuedIn) ? continuedIn.map(textOf) : [],
    columns: columnsOf(columns),
    timeZone: textOf(timeZone),
    clockOffset: textOf(clockOffsetMin),
    read: isObject(read) ? (read as Read) : {},
    rest: unknown.length === 0 ? null : { section, keys: Object.fromEntries(unknown) },
  };
}

function placeOf(section: Section, place: unknown, kind: unknown): Place {
  if (section === 'weather') return 'weather';
  if (section === 'heat') return heatKinds.find((it) => it === kind) ?? 'power';
  return loggerPlaces.find((it) => it === place) ?? 'inside';
}

const columnsOf = (columns: unknown): Columns =>
  isObject(columns)
    ? Object.fromEntries(
        columnRoles.flatMap((role) => (columns[role] === undefined ? [] : [[role, textOf(columns[role])]])),
      )
    : {};

const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The entries of a list; none where there is no list, null where it is something else. */
function objectsIn(list: unknown): readonly JsonObject[] | null {
  if (list === undefined) return [];
  return Array.isArray(list) && list.every(isObject) ? list : null;
}

const textOf = (value: unknown): string =>
  typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
