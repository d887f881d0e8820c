/** Where the loggers of newly come files probably hung: by file name, column names and values. Marked as guesses. */
import type { Imported } from '../../src/assessment.ts';
import { plainName } from '../../src/logs/names.ts';
import { type Guess, heatKinds, newPlacement, type Place, type Placement, sectionOf } from './draft.ts';

/** @param besides what is placed already: where one logger is outside, coldness makes no other one so */
export function guessPlacements(files: readonly Imported[], besides: readonly Placement[]): Placement[] {
  const guessed = files.flatMap((file) => placementsIn(file).map((placement) => ({ file, placement })));
  const all = [...besides, ...guessed.map(({ placement }) => placement)];
  const hasOutside = all.some(({ place }) => place === 'outside' || place === 'weather');
  const coldest = hasOutside ? null : farColdest(guessed.filter(({ placement }) => isOpen(placement)));
  return guessed.map(({ placement }) =>
    placement === coldest ? { ...placement, place: 'outside', room: '', guess: 'values' } : placement,
  );
}

function placementsIn(file: Imported): Placement[] {
  const { channels } = file;
  const has = (...wanted: readonly string[]) => channels.some(({ quantity }) => wanted.includes(quantity));
  if (channels.length === 0) return [newPlacement(file.file, 'left out')];
  const texts = [stem(file.file), file.understood?.preamble.logger ?? ''];
  if (has('windSpeed', 'irradiance') || names(WEATHER, texts))
    return [newPlacement(file.file, 'weather', has('windSpeed', 'irradiance') ? 'columns' : 'name')];
  const heat = heatKinds.filter((kind) => has(kind)).slice(0, 1);
  const meters = heat.map((kind) => newPlacement(file.file, kind, 'columns'));
  const thermometers = channels.filter(({ quantity }) => quantity === 'temperature');
  if (thermometers.length === 0)
    return meters.length > 0 ? meters : [newPlacement(file.file, 'left out', 'columns')];
  if (thermometers.length === 1) {
    const room = roomIn(texts[1]) || roomIn(texts[0]);
    return [...loggerAt(file.file, placeNamed([...texts, thermometers[0].column]), room), ...meters];
  }
  return [...thermometers.flatMap(({ column }) => severalIn(file, column, texts)), ...meters];
}

/** One of a file's several thermometers: its column tells before the file; the humidity that follows it is its own. */
function severalIn(file: Imported, column: string, texts: readonly string[]): Placement[] {
  const { channels } = file;
  const at = channels.findIndex((it) => it.column === column && it.quantity === 'temperature');
  const next = channels.findIndex((it, i) => i > at && it.quantity === 'temperature');
  const humidity = channels.slice(at, next < 0 ? undefined : next).find((it) => it.quantity === 'humidity');
  const columns = {
    temperature: column,
    ...(humidity === undefined ? {} : { humidity: humidity.column }),
  };
  const room = roomIn(column);
  const place = placeNamed([column]) ?? (room === '' ? placeNamed(texts) : null);
  return loggerAt(file.file, place, room).map((it) => ({ ...it, columns }));
}

function loggerAt(file: string, place: Place | null, room: string): Placement[] {
  const guess: Guess = place === null ? (room === '' ? 'nothing' : 'name') : 'name';
  const is = place ?? 'inside';
  return [{ ...newPlacement(file, is, guess), room: is === 'inside' ? room : '' }];
}

const isOpen = ({ place, guess }: Placement) => place === 'inside' && guess !== null;

/** At least this much colder in the mean than the middle of the others [K]. */
const FAR_COLDER = 4;

/** The logger that is so much colder than the others that it is probably outside. */
function farColdest(open: readonly { file: Imported; placement: Placement }[]): Placement | null {
  const means = open.flatMap(({ file, placement }) => {
    const { temperature } = placement.columns;
    const channel = file.channels.find(
      (it) => it.quantity === 'temperature' && (temperature === undefined || it.column === temperature),
    );
    return typeof channel?.mean === 'number' ? [{ placement, mean: channel.mean }] : [];
  });
  const [first, ...others] = means.toSorted((a, b) => a.mean - b.mean);
  if (first === undefined || others.length === 0) return null;
  const middle = others[Math.floor(others.length / 2)].mean;
  return middle - first.mean >= FAR_COLDER ? first.placement : null;
}

function placeNamed(texts: readonly string[]): Place | null {
  return PLACES.find(([, words]) => names(words, texts))?.[0] ?? null;
}

const names = (words: RegExp, texts: readonly string[]) => texts.some((text) => words.test(plainName(text)));

/** "logs/2027-01 living_room.csv" as "Living room"; empty where nothing remains that could be a room. */
export function roomIn(text: string): string {
  const words = plainName(text)
    .split(' ')
    .filter((word) => !NOISE.test(word));
  const room = words.join(' ').trim();
  return /[a-z]{2}/.test(room) ? room.charAt(0).toUpperCase() + room.slice(1) : '';
}

/** Words of a name that are not the room's. */
const NOISE =
  /^(\d{4,}|(19|20)\d\d|\d\d|csv|txt|logs?|loggers?|export(ed)?|data|readings?|record|temp(erature)?s?|temperatur|humidity|hum|rh|t|sensor|channel|ch|column|file|c|f|degc|celsius|inside|indoors?|innen|in|int)$|^column \d+$/;

const WEATHER = /\b(weather|meteo\w*|met|station|wetter\w*|wetterstation|climate|vaeret|vader|pogoda)\b/;

/** The first that is named counts: "outside wall surface" is a surface. */
const PLACES: readonly (readonly [Place, RegExp])[] = [
  ['surface', /\b(surface|oberflache\w*|superficie|oppervlak\w*)\b/],
  [
    'adjacent',
    /\b(neighbou?rs?|neighbou?ring|next door|adjacent|party wall|nachbar\w*|voisins?|vecinos?|vicini|buren)\b/,
  ],
  [
    'void',
    /\b(void|loft|attic|roof( ?space)?|crawl ?space|under ?floor|dachboden|spitzboden|dachraum|combles?|grenier|desvan|soffitta|sottotetto|zolder|strych)\b/,
  ],
  [
    'outside',
    /\b(out|outside|outdoors?|exterior|external|ext|garden|yard|balcony|aussen\w*|draussen|garten|exterieur|dehors|jardin|fuera|esterno|fuori|giardino|buiten\w*|tuin|utomhus|utendors|udendors|ute|venku|zewnatrz)\b/,
  ],
  ['surface', /\b(wall|wand|mur|pared|parete|muur)\b/],
];

const stem = (file: string) =>
  file.slice(file.lastIndexOf('/') + 1).replace(/(\.(csv|txt|tsv|dat|log|zip|gz))+$/i, '');

/** Whether any thermometer is placed inside, and one outside or a weather file: what an assessment needs. */
export const placedEnough = (placements: readonly Placement[]) => ({
  inside: placements.some(({ place }) => place === 'inside'),
  outside: placements.some(({ place }) => place === 'outside' || sectionOf(place) === 'weather'),
});
