/** One date and time as text, taken apart. Which of day and month comes first is left open: a row cannot tell. */

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
}

/** What a text holds of date and time; null when it is neither. A date alone counts as its midnight. */
export function readStamp(text: string): Stamp | null {
  const match = STAMP.exec(text);
  if (match === null) return namedMonth(text) ?? compact(text);
  const [, first = '', , second = '', third = '', clockText] = match;
  const shape = shapeOf(first, third);
  if (shape === null) return null;
  return stamp(shape, [Number(first), Number(second), Number(third)], clockText);
}

/** Seconds since midnight of a text that is a time of day alone; NaN when it is not. */
export const readTimeOfDay = (text: string): number => readClock(text)?.clock ?? Number.NaN;

/** A date without a time of day. */
export const isDateAlone = (text: string): boolean => !/\d:\d|\d{8}/.test(text) && readStamp(text) !== null;

const STAMP = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})(?:(?:\s*[T,_]\s*|\s+|-(?=\d\d:))(.+))?$/i;
const CLOCK =
  /^(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?\s*(?:([ap])\.?\s?m?\.?)?\s*(?:(z)|(?:utc|gmt)?([+-])(\d\d?)(?::?(\d\d))?|utc|gmt)?(?:\[[^\]]*\])?$/i;
const NAMED =
  /^(?:[a-z]{2,10}\.?,?\s+)?(\d{1,2})[.\s/-]*([a-zà-ÿ]{3,10})\.?[,\s/-]+(\d{4}|\d\d)(?:(?:[T,\s]\s*)+(.+))?$/i;
const NAMED_FIRST = /^(?:[a-z]{2,10}\.?,?\s+)?([a-zà-ÿ]{3,10})\.?\s+(\d{1,2}),?\s+(\d{4})(?:[,\s]+(.+))?$/i;
const COMPACT = /^(\d{4})(\d\d)(\d\d)[T_ ]?(\d\d):?(\d\d)(?::?(\d\d))?(z|[+-]\d\d:?\d\d)?$/i;

/** The first letters of the months in English, Spanish, German, French, Italian and Dutch. */
const MONTHS: readonly RegExp[] = [
  /^(jan|ene|gen)/,
  /^(feb|fev)/,
  /^(mar|mae|maa|mrt|mrz)/,
  /^(apr|abr|avr)/,
  /^(may|mai|mei|mag)/,
  /^(jun|juin|giu)/,
  /^(jul|juil|lug)/,
  /^(aug|ago|aou)/,
  /^(sep|set)/,
  /^(oct|okt|ott)/,
  /^(nov)/,
  /^(dec|dez|dic)/,
];

function shapeOf(first: string, third: string): Shape | null {
  if (first.length === 4 && third.length <= 2) return 'year first';
  if (first.length <= 2 && third.length === 4) return 'year last';
  return first.length <= 2 && third.length === 2 ? 'open' : null;
}

function stamp(shape: Shape, parts: Stamp['parts'], clockText: string | undefined): Stamp | null {
  if (clockText === undefined) return { shape, parts, clock: 0, offset: Number.NaN };
  const read = readClock(clockText);
  return read && { shape, parts, ...read };
}

function namedMonth(text: string): Stamp | null {
  const dayFirst = NAMED.exec(text);
  const match = dayFirst ?? NAMED_FIRST.exec(text);
  if (match === null) return null;
  const [day, name, year] = dayFirst ? [match[1], match[2], match[3]] : [match[2], match[1], match[3]];
  const plain = (name ?? '')
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '');
  const month = MONTHS.findIndex((months) => months.test(plain)) + 1;
  return month === 0 ? null : stamp('day first', [Number(day), month, Number(year)], match[4]);
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
function readClock(text: string): { readonly clock: number; readonly offset: number } | null {
  const plain = plainClock(text);
  if (!Number.isNaN(plain)) return { clock: plain, offset: Number.NaN };
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const [, hours, minutes, seconds = '0', fraction = '0', half, z, sign, offsetHours, offsetMinutes = '0'] =
    match;
  const minute = Number(minutes);
  const second = Number(seconds);
  const hour = half === undefined ? Number(hours) : hourOfHalf(Number(hours), half.toLowerCase());
  const clock = hour * 3600 + minute * 60 + second + Number(`0.${fraction}`);
  if (minute > 59 || second > (minute === 59 ? 60 : 59) || !(clock <= 86400)) return null;
  const offset = Number(offsetHours) * 3600 + Number(offsetMinutes) * 60;
  if (sign !== undefined) return { clock, offset: sign === '-' ? -offset : offset };
  return { clock, offset: z !== undefined || /(utc|gmt)(\[|$)/i.test(text) ? 0 : Number.NaN };
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
