/** What was made of a log, in a line each: how it is written, and how its clock was read. */
import type { Imported } from '../assessment.ts';

type Understood = NonNullable<Imported['understood']>;

/** "semicolons, decimal comma, utf-8, from a zip" */
export function writtenWords({ delimiter, decimal, encoding, packed }: Understood): string {
  const separated = separators[delimiter] ?? delimiter;
  const words = [separated, decimal === ',' ? 'decimal comma' : 'decimal point', encoding];
  return [...words, ...(packed === null ? [] : [`from a ${packed}`])].join(', ');
}

const separators: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'upright bars',
  blanks: 'blanks',
};

/** "date and time in “Time”, day first (told by the whole file), Europe/London (the house’s zone)" */
export function clockWords({ clock }: Understood): string {
  const columns = clock.columns.map((column) => `“${column}”`).join(' and ');
  const order =
    clock.order === null ? [] : [`${clock.order.replace('-', ' ')} (${orderBecause[clock.orderBy]})`];
  const zone =
    clock.zoneBy === 'each row' ? zoneBecause['each row'] : `${clock.zone} (${zoneBecause[clock.zoneBy]})`;
  return [`${clock.written} in ${columns}`, ...order, zone].join(', ');
}

const orderBecause: Readonly<Record<Understood['clock']['orderBy'], string>> = {
  'the text': 'as it is written',
  'the whole file': 'told by the whole file',
  'the house': 'as house.json says',
  'the other files': 'as in the other files',
  'a guess': 'a guess',
};

const zoneBecause: Readonly<Record<Understood['clock']['zoneBy'], string>> = {
  'each row': 'each row with its offset',
  'the header': 'from the header',
  'the preamble': 'from the lines above the header',
  'the house': 'the house’s zone',
};
