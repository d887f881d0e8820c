/** How a file was read, in sentences. */
import type { Understood } from './columns.ts';

/**
 * "Day first, told by the whole file; Europe/London time, the house’s."
 *
 * @param zoneOf who named the zone where the file does not: the person for this file, the house, or nobody yet
 */
export function clockWords(
  { clock: { order, orderBy, written, zone, zoneBy } }: Understood,
  zoneOf: 'the person' | 'the house' | 'nobody',
): string {
  const by = zoneBy === 'the house' ? silentZoneWords[zoneOf] : zoneByWords[zoneBy];
  const how = written === 'date and time' ? '' : `${writtenWords[written] ?? written}; `;
  const dates = order === null ? '' : `${orderWords[order]}, ${orderByWords[orderBy]}; `;
  const zones = zone === null ? 'each row says its zone' : `${zone} time, ${by}`;
  const sentence = `${how}${dates}${zones}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** "Semicolons between the columns, a decimal comma; header on line 5; UTF-8." */
export function dialectWords({ delimiter, decimal, headerLine, encoding, packed }: Understood): string {
  const parted = delimiterWords[delimiter] ?? `“${delimiter}” between the columns`;
  const point = decimal === ',' ? 'a decimal comma' : 'a decimal point';
  const header = headerLine === null ? 'no header' : `header on line ${headerLine}`;
  const from = packed === null ? '' : `; out of a ${packed === 'zip' ? 'zip' : 'gzip'} archive`;
  return `${parted}, ${point}; ${header}; ${encoding.toUpperCase()}${from}.`;
}

const delimiterWords: Readonly<Record<string, string>> = {
  ',': 'Commas between the columns',
  ';': 'Semicolons between the columns',
  '\t': 'Tabs between the columns',
  '|': 'Bars between the columns',
  blanks: 'Blanks between the columns',
};

const orderWords = {
  'day-first': 'day first',
  'month-first': 'month first',
  'year-first': 'year first',
} as const;

const orderByWords = {
  'the text': 'told by the text',
  'the whole file': 'told by the whole file',
  'the house': 'as you say',
  'the other files': 'as in the other files',
  'a guess': 'a guess',
} as const;

const zoneByWords = {
  'each row': 'told by each row',
  'the header': 'told by the header',
  'the preamble': 'told above the header',
} as const;

const silentZoneWords = {
  'the person': 'as you say',
  'the house': 'the house’s',
  nobody: 'until the house has a place',
} as const;

const writtenWords: Readonly<Record<string, string>> = {
  'epoch seconds': 'seconds since 1970',
  'epoch milliseconds': 'milliseconds since 1970',
  'epoch microseconds': 'microseconds since 1970',
  'epoch nanoseconds': 'nanoseconds since 1970',
  'serial days from 1900': 'a spreadsheet’s days from 1900',
  'serial days from 1904': 'a spreadsheet’s days from 1904',
  elapsed: 'times counted from a start',
  'sample numbers': 'numbered samples from a start',
};
