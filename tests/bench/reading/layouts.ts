/** The same year in the layouts that spreadsheets and loggers commonly write. */
import { MINUTES, START, type Year } from './yearOfMinutes.ts';

export interface Layout {
  readonly name: string;
  /** Zone of the clock in the file. */
  readonly timeZone: 'UTC' | 'Europe/London';
  readonly delimiter: ',' | ';';
  readonly decimal: '.' | ',';
  readonly dateOrder: 'year-first' | 'day-first' | 'month-first';
  /** The time as `strptime` spells it. */
  readonly format: string;
  readonly write: (year: Year) => string;
}

interface Shown {
  readonly year: number;
  readonly month: string;
  readonly day: string;
  readonly hour: number;
  readonly minute: string;
}

const two = (n: number) => String(n).padStart(2, '0');

/** British summer time of 2026: last Sunday of March to last Sunday of October, 01:00 UTC both. */
const SUMMER = { from: Date.UTC(2026, 2, 29, 1) / 1000, to: Date.UTC(2026, 9, 25, 1) / 1000 };

function shownAt(instant: number, timeZone: Layout['timeZone']): Shown {
  const isSummer = timeZone !== 'UTC' && instant >= SUMMER.from && instant < SUMMER.to;
  const at = new Date((instant + (isSummer ? 3600 : 0)) * 1000);
  return {
    year: at.getUTCFullYear(),
    month: two(at.getUTCMonth() + 1),
    day: two(at.getUTCDate()),
    hour: at.getUTCHours(),
    minute: two(at.getUTCMinutes()),
  };
}

function layout(
  how: Omit<Layout, 'write'>,
  time: (shown: Shown) => string,
  quote: (cell: string) => string = (cell) => cell,
): Layout {
  const number = (value: number, decimals: number) => value.toFixed(decimals).replace('.', how.decimal);
  const row = (cells: readonly string[]) => cells.map(quote).join(how.delimiter);
  return {
    ...how,
    write: ({ temperature, humidity }) => {
      const rows = [row(['Time', 'Temperature (°C)', 'Humidity (%)'])];
      for (let i = 0; i < MINUTES; i++) {
        const shown = shownAt(START + 60 * i, how.timeZone);
        rows.push(row([time(shown), number(temperature[i], 2), number(humidity[i], 1)]));
      }
      return `${rows.join('\n')}\n`;
    },
  };
}

export const layouts: readonly Layout[] = [
  layout(
    {
      name: 'ISO in UTC, comma',
      timeZone: 'UTC',
      delimiter: ',',
      decimal: '.',
      dateOrder: 'year-first',
      format: '%Y-%m-%dT%H:%M:%SZ',
    },
    ({ year, month, day, hour, minute }) => `${year}-${month}-${day}T${two(hour)}:${minute}:00Z`,
  ),
  layout(
    {
      name: 'dd/mm/yyyy hh:mm:ss in local time, semicolon, decimal comma',
      timeZone: 'Europe/London',
      delimiter: ';',
      decimal: ',',
      dateOrder: 'day-first',
      format: '%d/%m/%Y %H:%M:%S',
    },
    ({ year, month, day, hour, minute }) => `${day}/${month}/${year} ${two(hour)}:${minute}:00`,
  ),
  layout(
    {
      name: 'every cell in quotes, yyyy-mm-dd hh:mm, comma',
      timeZone: 'UTC',
      delimiter: ',',
      decimal: '.',
      dateOrder: 'year-first',
      format: '%Y-%m-%d %H:%M',
    },
    ({ year, month, day, hour, minute }) => `${year}-${month}-${day} ${two(hour)}:${minute}`,
    (cell) => `"${cell}"`,
  ),
  layout(
    {
      name: 'mm/dd/yyyy hh:mm AM/PM in local time, comma',
      timeZone: 'Europe/London',
      delimiter: ',',
      decimal: '.',
      dateOrder: 'month-first',
      format: '%m/%d/%Y %I:%M %p',
    },
    ({ year, month, day, hour, minute }) =>
      `${month}/${day}/${year} ${two(hour % 12 || 12)}:${minute} ${hour < 12 ? 'AM' : 'PM'}`,
  ),
];

export function layoutNamed(name: string): Layout {
  const found = layouts.find((it) => it.name === name);
  if (found === undefined) throw new RangeError(`no layout ${name}`);
  return found;
}
