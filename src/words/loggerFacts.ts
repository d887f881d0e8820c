/** What a logger is and did, each fact in a few words: for the table of loggers. */
import type { Logger } from '../house.ts';
import { count, dayOfYear, decimal, duration, kelvins, moment } from './figures.ts';

type Placed = Pick<Logger, 'place' | 'room' | 'element' | 'volumeM3'>;

/** "inside, for 65 m³", "in the void behind “Ceiling”" */
export function placeWords({ place, element, volumeM3 }: Placed): string {
  const of = element === undefined ? '' : ` “${element}”`;
  switch (place) {
    case 'inside':
      return volumeM3 === undefined ? 'inside' : `inside, for ${decimal(volumeM3, 0)} m³`;
    case 'outside':
      return 'outdoors';
    case 'void':
      return of === '' ? 'in a void' : `in the void behind${of}`;
    case 'surface':
      return of === '' ? 'on a surface' : `on the surface of${of}`;
    case 'adjacent':
      return of === '' ? 'next door' : `next door, behind${of}`;
  }
}

/** "3 inside, 1 outdoors and 1 in a void" */
export function loggersCounted(loggers: readonly Pick<Logger, 'place'>[]): string {
  const counted = (Object.keys(placed) as Logger['place'][]).flatMap((place) => {
    const n = loggers.filter((it) => it.place === place).length;
    return n === 0 ? [] : [`${n} ${placed[place]}`];
  });
  return `${count(loggers.length, 'logger')}: ${new Intl.ListFormat('en-GB').format(counted)}.`;
}

const placed: Readonly<Record<Logger['place'], string>> = {
  inside: 'inside',
  outside: 'outdoors',
  void: 'in a void',
  surface: 'on a surface',
  adjacent: 'next door',
};

/** "10 min" @param seconds 0 where there is a single reading */
export const everyWords = (seconds: number) => (seconds === 0 ? 'a single reading' : duration(seconds));

/** "0.1 °C" @param step 0 where every value is the same */
export const resolutionWords = (step: number, unit: string) =>
  step === 0 ? 'never another value' : `${decimal(step, step < 0.095 ? 2 : 1)} ${unit}`;

/** "2, the longest 3.5 h" */
export const gapsWords = ({ count: n, longest }: { readonly count: number; readonly longest: number }) =>
  n === 0 ? 'none' : `${n}, the longest ${longestWords(longest)}`;

const DAY = 86_400; // [s]
const longestWords = (seconds: number) =>
  seconds < 2 * DAY ? duration(seconds) : count(Math.round(seconds / DAY), 'day');

/** How long its last reading lies behind the newest of the house, where that is worth a word. @returns null where not */
export const behindWords = (seconds: number) =>
  seconds < 2 * 3600 ? null : `${longestWords(seconds)} before the newest`;

/** "none", "14 of 5041" */
export const doubtedWords = (doubted: number, of: number) => (doubted === 0 ? 'none' : `${doubted} of ${of}`);

/** What the house adds to a logger by hand. @returns null for nothing */
export const statedOffsetWords = ({ temperatureOffsetK = 0 }: Pick<Logger, 'temperatureOffsetK'>) =>
  temperatureOffsetK === 0
    ? null
    : `${kelvins(Math.abs(temperatureOffsetK))} ${temperatureOffsetK > 0 ? 'added' : 'taken off'}, as house.json says`;

/** What is done to its clock by hand. @returns null for nothing */
export const clockShiftWords = ({ clockOffsetMin = 0 }: Pick<Logger, 'clockOffsetMin'>) =>
  clockOffsetMin === 0
    ? null
    : `${Math.abs(clockOffsetMin)} min ${clockOffsetMin > 0 ? 'added' : 'taken off'}, as house.json says`;

export const freshSentence = (seconds: number): string | null =>
  seconds < 0
    ? null
    : seconds < 2 * DAY
      ? `${duration(seconds)} ago`
      : `${Math.round(seconds / DAY)} days ago`;

/** A local time of house.json, with or without its hour: "9 January 2027, 21:00". */
export const localMoment = (local: string) =>
  local.length > 'YYYY-MM-DD'.length ? moment(local) : dayOfYear(local);

export const nothingSensed =
  'Seen together and beside the sun, nothing speaks against any of them: none in the sun, swapped, carried about or stopped, and no clock that is off.';
