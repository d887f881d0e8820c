/** One date and time as text, taken apart. Which of day and month comes first is left open: a row cannot tell. */
import { abbreviationOffset, isAmbiguousZone } from './zoneNamed.ts';

/** Where year, month and day stand, as far as the text itself tells. */
export type Shape = 'year first' | 'day first' | 'year last' | 'open';

export interface Stamp {
  readonly shape: Shape;
  /** The three numbers of the date in the order of the text; a month's name already as its number, day before it. */
  readonly parts: readonly [number, number, number];
  /** Seconds since the day began. */
  readonly clock: number;
  /** Offset from UTC [s]; NaN where the text has none. */
  readonly offset: number;
  /** The text holds a time of day. */
  readonly timed: boolean;
}

/** What a text holds of date and time; null when it is neither. A date alone counts as its midnight. */
export function readStamp(text: string): Stamp | null {
  const match = STAMP.exec(text) ?? STAMP.exec(withoutMarks(text));
  if (match === null) return namedMonth(text) ?? compact(text);
  const [, first = '', , second = '', third = '', clockText] = match;
  const shape = shapeOf(first, third);
  if (shape === null) return null;
  return stamp(shape, [Number(first), Number(second), Number(third)], clockText);
}

/** The time that a date in one cell and a time of day in another make; either may be a bare number. */
export function readStampOf(date: string, time: string): Stamp | null {
  const bare = isCompactDate(date);
  const day = bare ? compact(`${date}0000`) : readStamp(date);
  const digits = bare && isCompactTime(time) ? time.match(/\d\d/g)?.join(':') : time.replaceAll('.', ':');
  const clock = readTimeText(time) ?? readTimeText(digits ?? '');
  return day && clock && { ...day, ...clock, timed: true };
}

/** Seconds since midnight of a text that is a time of day alone; NaN when it is not. */
export const readTimeOfDay = (text: string): number => readTimeText(text)?.clock ?? Number.NaN;

/** A date without a time of day. */
export const isDateAlone = (text: string): boolean => readStamp(text)?.timed === false;

/** "20260125", as one number: a date where times stand beside it. */
export const isCompactDate = (text: string): boolean =>
  /^(19[89]|20\d)\d(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])$/.test(text);

/** "1810" or "181000", as one number: a time of day where dates stand beside it. */
export const isCompactTime = (text: string): boolean => /^([01]\d|2[0-3])[0-5]\d([0-5]\d)?$/.test(text);

/** "2026年1月25日 18時05分" and "2026년 1월 25일" as "2026-1-25 18:05". */
const withoutMarks = (text: string) =>
  text
    .replace(/^(\d{4})[年년]\s*(\d{1,2})[月월]\s*(\d{1,2})[日일]\s*/, '$1-$2-$3 ')
    .replace(/(\d{1,2})[時时시]\s*(\d{1,2})[分분]\s*(?:(\d{1,2})[秒초])?$/, (_, hour, minute, second = '0') =>
      [hour, minute, second].map((part: string) => part.padStart(2, '0')).join(':'),
    )
    .trim();

const STAMP = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})\.?(?:(?:\s*[T,_]\s*|\s+|-(?=\d\d:))(.+))?$/i;
const CLOCK =
  /^(?:([ap])\.?\s?m\.?\s*)?(\d{1,2})[:h](\d\d)(?:[:m](\d\d)(?:[.,](\d{1,9}))?s?)?\s*(?:([ap])\.?\s?m?\.?)?\s*(?:(z)|(?:utc|gmt)?([-+−])(\d\d?)(?::?(\d\d))?|(uhr|[a-z]{3,5}))?(?:\[[^\]]*\])?$/i;
const NAMED =
  /^(?:[a-zà-ÿ]{2,10}\.?,?\s+)?(\d{1,2})(?:er|st|nd|rd|th)?[.\s/-]*(?:de\s+)?([a-zà-ÿ]{3,10})\.?(?:[,\s/-]+|\s+de\s+)(\d{4}|\d\d)(?:(?:[T,\s]\s*)+(.+))?$/i;
const NAMED_FIRST =
  /^(?:[a-zà-ÿ]{2,10}\.?,?\s+)?([a-zà-ÿ]{3,10})\.?[\s/-]+(\d{1,2})(?:st|nd|rd|th)?,?[\s/-]+(\d{4})(?:[,\s]+(.+))?$/i;
const NAMED_LAST = /^(\d{4})[-\s/.]([a-zà-ÿ]{3,10})\.?[-\s/.](\d{1,2})(?:[T,\s]+(.+))?$/i;
const COMPACT = /^(\d{4})(\d\d)(\d\d)[T_ ]?(\d\d):?(\d\d)(?::?(\d\d))?(z|[+-]\d\d:?\d\d)?$/i;

/** The first letters of the months in English, Spanish, German, French, Italian, Dutch, Portuguese and Swedish. */
const MONTHS: readonly RegExp[] = [
  /^(jan|ene|gen)/,
  /^(feb|fev)/,
  /^(mar|mae|maa|mrt|mrz)/,
  /^(apr|abr|avr)/,
  /^(may|mai|mei|mag|maj)/,
  /^(jun|juin|giu)/,
  /^(jul|juil|lug)/,
  /^(aug|ago|aou)/,
  /^(sep|set)/,
  /^(oct|okt|ott|out)/,
  /^(nov)/,
  /^(dec|dez|dic)/,
];

function shapeOf(first: string, third: string): Shape | null {
  if (first.length === 4 && third.length <= 2) return 'year first';
  if (first.length <= 2 && third.length === 4) return 'year last';
  return first.length <= 2 && third.length === 2 ? 'open' : null;
}

function stamp(shape: Shape, parts: Stamp['parts'], clockText: string | undefined): Stamp | null {
  if (clockText === undefined) return { shape, parts, clock: 0, offset: Number.NaN, timed: false };
  const read = readTimeText(clockText) ?? readTimeText(besideDate(clockText));
  return read && { shape, parts, ...read, timed: true };
}

/** "18.10.00", "klo 18.10" and "18", which beside a date are times and alone could be anything. */
const besideDate = (text: string) => {
  if (/^\d{1,2}\.\d\d\.\d\d$/.test(text)) return text.replaceAll('.', ':');
  const [, nordic] = /^klo?\.?\s*(\d{1,2}[.:]\d\d([.:]\d\d)?)$/i.exec(text) ?? [];
  if (nordic !== undefined) return nordic.replaceAll('.', ':');
  return /^([01]\d|2[0-3])$/.test(text) ? `${text}:00` : '';
};

function namedMonth(text: string): Stamp | null {
  const [, day, name, year, clock] = NAMED.exec(text) ?? inOrder(NAMED_FIRST.exec(text), 2, 1, 3);
  const found = monthNamed(name);
  if (found > 0) return stamp('day first', [Number(day), found, Number(year)], clock);
  const [, lastDay, lastName, lastYear, lastClock] = inOrder(NAMED_LAST.exec(text), 3, 2, 1);
  const month = monthNamed(lastName);
  return month === 0 ? null : stamp('day first', [Number(lastDay), month, Number(lastYear)], lastClock);
}

const inOrder = (match: RegExpExecArray | null, day: number, name: number, year: number) =>
  match === null ? [] : ['', match[day], match[name], match[year], match[4]];

/** 1 to 12; 0 where it is no month's name. */
function monthNamed(name: string | undefined): number {
  const plain = (name ?? '')
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');
  return MONTHS.findIndex((months) => months.test(plain)) + 1;
}

function compact(text: string): Stamp | null {
  const match = COMPACT.exec(text);
  if (match === null) return null;
  const [, year, month, day, hour = '', minute = '', second = '00', zone = ''] = match;
  return stamp(
    'year first',
    [Number(year), Number(month), Number(day)],
    `${hour}:${minute}:${second}${zone}`,
  );
}

/** Hours to seconds, half of the day and offset. 24:00 ends a day; second 60 is a leap second (RFC 3339, 5.7). */
function readTimeText(text: string): { readonly clock: number; readonly offset: number } | null {
  const plain = plainClock(text);
  if (!Number.isNaN(plain)) return { clock: plain, offset: Number.NaN };
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const [, before, hours, minutes, seconds = '0', fraction = '0', after] = match;
  const minute = Number(minutes);
  const second = Number(seconds);
  const half = before ?? after;
  const hour = half === undefined ? Number(hours) : hourOfHalf(Number(hours), half.toLowerCase());
  const clock = hour * 3600 + minute * 60 + second + Number(`0.${fraction}`);
  if (minute > 59 || second > (minute === 59 ? 60 : 59) || !(clock <= 86400)) return null;
  const offset = offsetOf(match.slice(7));
  return offset === null ? null : { clock, offset };
}

/** Offset [s] of what follows a time of day; NaN where it states none, null where it is no zone at all. */
function offsetOf([z, sign, hours, minutes = '0', letters]: readonly (string | undefined)[]): number | null {
  if (z !== undefined) return 0;
  const size = Number(hours) * 3600 + Number(minutes) * 60;
  if (sign !== undefined) return sign === '+' ? size : -size;
  if (letters === undefined || /^uhr$/i.test(letters) || isAmbiguousZone(letters)) return Number.NaN;
  return abbreviationOffset(letters) ?? null;
}

/** "hh:mm" and "hh:mm:ss" without a regular expression, for they are most of all rows; NaN for the rest. */
function plainClock(text: string): number {
  if ((text.length !== 5 && text.length !== 8) || text[2] !== ':') return Number.NaN;
  if (text.length === 8 && text[5] !== ':') return Number.NaN;
  const hour = twoDigits(text, 0);
  const minute = twoDigits(text, 3);
  const second = text.length === 8 ? twoDigits(text, 6) : 0;
  return hour <= 23 && minute <= 59 && second <= 59 ? hour * 3600 + minute * 60 + second : Number.NaN;
}

function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}

/** 12 AM is midnight, 12 PM noon; 13 PM, which some loggers write, is 13:00. */
const hourOfHalf = (hour: number, half: string) => {
  if (hour > 12) return half === 'p' ? hour : Number.NaN;
  return (hour % 12) + (half === 'p' ? 12 : 0);
};
