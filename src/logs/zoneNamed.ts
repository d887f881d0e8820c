/** What a text says of the clock's zone: an IANA name, an offset from UTC, or an abbreviation. */
import { Temporal } from 'temporal-polyfill';

export type ZoneNamed =
  | { readonly kind: 'offset' /** [s] */; readonly offset: number }
  | { readonly kind: 'zone'; readonly zone: string }
  /** Local time with changes: "CET/CEST", "UTC+1 (DST: on)". */
  | {
      readonly kind: 'changing';
      readonly said: string /** [s] */;
      readonly winter: number;
      readonly summer: number;
    }
  /** Letters that stand for several zones of the world. */
  | { readonly kind: 'ambiguous'; readonly said: string };

/** The zone in a header or a line of the preamble, which may say more; null when it says none. */
export function zoneNamed(text: string): ZoneNamed | null {
  const name = IANA.exec(text)?.[0];
  if (name !== undefined && isZone(name)) return { kind: 'zone', zone: name };
  const pair = pairIn(text);
  if (pair !== null) return { kind: 'changing', ...pair };
  const offset = offsetIn(text);
  if (offset !== null && saysSummerTime(text))
    return { kind: 'changing', said: text.trim(), winter: offset, summer: offset + HOUR };
  if (offset !== null) return { kind: 'offset', offset };
  for (const [word] of text.matchAll(/\b[A-Z]{2,5}\b/g)) {
    const known = abbreviationOffset(word);
    if (known !== undefined && saysSummerTime(text) && !SUMMER.has(word))
      return { kind: 'changing', said: text.trim(), winter: known, summer: known + HOUR };
    if (known !== undefined) return { kind: 'offset', offset: known };
    if (AMBIGUOUS.has(word)) return { kind: 'ambiguous', said: word };
  }
  return null;
}

/** Offset [s] of an abbreviation that means one thing only; undefined for any other. */
export const abbreviationOffset = (letters: string): number | undefined => {
  const hours = OFFSETS.get(letters.toUpperCase());
  return hours === undefined ? undefined : hours * 3600;
};

/** Whether a text says that the clock goes over to summer time. */
export const saysSummerTime = (text: string): boolean => SUMMER_TIME.test(text);

/** Whether an abbreviation stands for several zones. */
export const isAmbiguousZone = (letters: string): boolean => AMBIGUOUS.has(letters.toUpperCase());

/** "+01:00", as a zone is named that never changes. */
export function offsetName(offset: number): string {
  const minutes = Math.round(Math.abs(offset) / 60);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** The winter and the summer letters of one zone, such as "CET/CEST" or "GMT or BST"; null where there are no two. */
function pairIn(text: string) {
  const words = Array.from(text.matchAll(/\b[A-Z]{2,5}\b/g), ([word]) => word);
  const ofWinter = words.find((word) => isZoneLetters(word) && word !== 'UTC' && !SUMMER.has(word));
  const ofSummer = words.find((word) => SUMMER.has(word));
  if (ofWinter === undefined || ofSummer === undefined) return null;
  const winter = abbreviationOffset(ofWinter);
  const summer = abbreviationOffset(ofSummer);
  const known = winter ?? (summer === undefined ? undefined : summer - HOUR);
  if (known === undefined || (summer ?? known + HOUR) !== known + HOUR) return null;
  return { said: `${ofWinter}/${ofSummer}`, winter: known, summer: known + HOUR };
}

const isZoneLetters = (word: string) => OFFSETS.has(word) || AMBIGUOUS.has(word);

const HOUR = 3600;

const SUMMER_TIME =
  /\b(dst|daylight[ -]sav\w*( time)?|summer ?time|sommerzeit|horario de verano|heure d.\u00e9t\u00e9|ora legale|zomertijd)\b\W{0,3}(on|yes|true|1|enabled|active|auto\w*|ein|an|ja|aktiv\w*|s[i\u00ed]|oui|aan)(?!\w)|\b(with|incl\w*|mit|inkl\w*|adjusted for)\s+(dst|daylight|summer ?time|sommerzeit)/i;

/** "UTC", "GMT+1", "UTC +05:30", or an offset alone such as "+01:00". */
function offsetIn(text: string): number | null {
  const named = /\b(?:utc|gmt|zulu)\b\s*(?:([-+−])\s?(\d{1,2})(?::?([0-5]\d))?(?!\d))?/i.exec(
    text.replaceAll('_', ' '),
  );
  const [, sign, hours, minutes] = named ?? /(?:^|[\s(:])([-+−])(\d\d):?([0-5]\d)(?![\d:])/.exec(text) ?? [];
  if (named === null && hours === undefined) return null;
  const size = Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60;
  if (size > LARGEST_OFFSET) return null;
  return sign === '-' || sign === '−' ? -size : size;
}

const LARGEST_OFFSET = 14 * 3600;

const IANA =
  /\b(Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Europe|Indian|Pacific|Etc)\/[A-Za-z_+\-/0-9]+/;

function isZone(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name);
    return true;
  } catch {
    return false;
  }
}

/** Hours from UTC of abbreviations in the IANA database that one region alone uses; German ones beside them. */
const OFFSETS: ReadonlyMap<string, number> = new Map([
  ['UTC', 0],
  ['GMT', 0],
  ['WET', 0],
  ['WEST', 1],
  ['CET', 1],
  ['MEZ', 1],
  ['CEST', 2],
  ['MESZ', 2],
  ['EET', 2],
  ['EEST', 3],
  ['MSK', 3],
  ['EST', -5],
  ['EDT', -4],
  ['CDT', -5],
  ['MST', -7],
  ['MDT', -6],
  ['PST', -8],
  ['PDT', -7],
  ['AKST', -9],
  ['AKDT', -8],
  ['JST', 9],
  ['AEST', 10],
  ['AEDT', 11],
  ['ACST', 9.5],
  ['ACDT', 10.5],
  ['AWST', 8],
  ['NZST', 12],
  ['NZDT', 13],
]);

/** Letters of summer times; Britain's and Ireland's mean other zones as well. */
const SUMMER: ReadonlySet<string> = new Set([
  'WEST',
  'CEST',
  'MESZ',
  'EEST',
  'EDT',
  'CDT',
  'MDT',
  'PDT',
  'AKDT',
  'AEDT',
  'ACDT',
  'NZDT',
  'BST',
  'IST',
]);

/** India, Ireland, Israel; central America, China, Cuba; Britain, Bangladesh; the Atlantic, Arabia. */
const AMBIGUOUS: ReadonlySet<string> = new Set(['IST', 'CST', 'BST', 'AST', 'SST', 'GST', 'ECT']);
