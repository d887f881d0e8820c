/**
 * What a competent programmer writes in an afternoon for one known layout: papaparse over the whole text with its
 * header, and `Date` for the time, in the process's own zone. No account of bad rows, no doubled hour told apart.
 * `Date` is the kindest choice: time-zone libraries are many times slower.
 */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import type { Contestant } from '../bench.ts';
import { type Layout, layoutNamed } from './layouts.ts';
import type { Series } from './series.ts';

export const naive: Contestant = {
  name: 'papaparse and Date',
  ready: async (kase) => {
    const layout = layoutNamed(kase);
    process.env.TZ = layout.timeZone;
    return async (input) => readAll(readFileSync(input, 'utf8'), layout);
  },
};

function readAll(text: string, layout: Layout): Series[] {
  const { data } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
    delimiter: layout.delimiter,
  });
  const time = Float64Array.from(data, (row) => instantOf(row.Time, layout));
  return ['Temperature (°C)', 'Humidity (%)'].map((column) => ({
    time,
    value: Float64Array.from(data, (row) => Number(row[column].replace(layout.decimal, '.'))),
  }));
}

function instantOf(text: string, { dateOrder }: Layout): number {
  if (dateOrder === 'year-first') return Date.parse(text) / 1000;
  const [, first, second, year, hours, minute, seconds = '0', half] =
    /^(\d\d)\/(\d\d)\/(\d{4}) (\d\d):(\d\d)(?::(\d\d))?(?: ([AP])M)?$/.exec(text) ?? [];
  const [day, month] = dateOrder === 'day-first' ? [first, second] : [second, first];
  const hour = half === undefined ? Number(hours) : (Number(hours) % 12) + (half === 'P' ? 12 : 0);
  return (
    new Date(Number(year), Number(month) - 1, Number(day), hour, Number(minute), Number(seconds)).getTime() /
    1000
  );
}
