/** Readings that were sent as JSON -> the log that the logger would have written, byte for byte the same each time. */
import type { House } from '../../src/house.ts';
import { filesOf } from '../../src/record/index.ts';
import { refused } from '../refused.ts';
import { entriesOf } from '../store/joinedChannels.ts';
import type { SentReadings } from './sentReadings.ts';

/** @throws Refused when the house has no such logger, or one whose times stand in two columns */
export function asCsv({ file, columns, readings }: SentReadings, house: House): string {
  const entry = entriesOf(house).find(({ entry }) => filesOf(entry).includes(file))?.entry;
  if (entry === undefined)
    throw refused(
      422,
      'logger-not-known',
      `house.json names no file “${file}”; nothing was stored.`,
      `Name one of these: ${entriesOf(house)
        .flatMap(({ entry }) => entry.file ?? [])
        .join(', ')}.`,
    );
  if (entry.columns?.date !== undefined)
    throw refused(
      422,
      'logger-with-two-time-columns',
      `The log “${file}” has its date and its time in two columns, which JSON cannot be put into.`,
      'Send the log as it is, as text/csv.',
    );
  const comma = entry.read?.decimal === ',';
  const delimiter = comma ? ';' : ',';
  const number = (value: number | null) =>
    value === null ? '' : comma ? String(value).replace('.', ',') : String(value);
  const header = [entry.columns?.time ?? 'Time', ...columns].map(quoted);
  // The log is read by the clock of its logger, which the instants know nothing of.
  const slow = (entry.clockOffsetMin ?? 0) * 60;
  const rows = readings.map(([at, ...values]) => [utc(at, slow), ...values.map(number)]);
  return `${[header, ...rows].map((row) => row.join(delimiter)).join('\n')}\n`;
}

/** @param slow how far the logger's clock is behind [s] */
const utc = (at: string | number, slow: number) =>
  new Date((typeof at === 'number' ? at * 1000 : Date.parse(at)) - slow * 1000).toISOString();
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
