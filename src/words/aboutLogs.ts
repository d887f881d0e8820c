/** The sentences of one log: what was found in it, and what was left out. */
import type { DoubtKind, LogFinding } from '../logs/index.ts';
import { count, duration, kelvins } from './figures.ts';
import { lines, list, type SentencesFor } from './sentence.ts';

const refusals: Readonly<Record<Extract<LogFinding, { code: 'archive-refused' }>['why'], string>> = {
  encrypted: 'it asks for a password',
  'too large': 'what is inside is larger than any log',
  'path out of the folder': 'a name in it leads out of its folder',
  broken: 'it is damaged or not complete',
  'no log inside': 'there is no file in it',
  office: 'it is a spreadsheet or document, not a log',
};

/** Names of an archive that are told: one may hold thousands. */
const MOST_NAMED = 10;

const doubts: Readonly<Record<DoubtKind, string>> = {
  impossible: 'no air, weather or pipe at a house has such a value',
  'power-on': 'a sensor that had not yet begun to measure',
  'false-zero': 'a zero among readings nowhere near it',
  stuck: 'the same value for much longer than this sensor ever rests',
  spike: 'far off the readings before and after',
};

export const aboutLogs: SentencesFor<LogFinding> = {
  'file-empty': () => ({ text: 'The file is empty.', remedy: 'Export it from the logger again.' }),
  'file-not-text': () => ({
    text: 'This is not a text file with readings.',
    remedy: 'Export the log as CSV and use that file.',
  }),
  'archive-refused': ({ why }) => ({
    text: `The archive was not opened: ${refusals[why]}.`,
    remedy: 'Bring the log itself, as CSV or text.',
  }),
  'archive-several-logs': ({ names }) => ({
    text: `The archive holds ${names.length > MOST_NAMED ? `${names.length} logs, among them` : 'several logs:'} ${list(names.slice(0, MOST_NAMED))}.`,
    remedy: 'Bring them one by one, so that each can be told where it hung.',
  }),
  'control-bytes': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} with signs that no text holds, as a power cut leaves them: ${lines(at, n)}.`,
    remedy: 'Export the log again if readings are missing there.',
  }),
  'readings-doubted': ({ why, count: n, lines: at }) => ({
    text: `${count(n, 'reading')} ${n === 1 ? 'is' : 'are'} kept out: ${doubts[why]} (${lines(at, n)}).`,
    remedy: 'If it was real, name the time in the logger’s “putBack” in house.json.',
  }),
  gaps: ({ count: n, longest, lines: at }) => ({
    text: `${count(n, 'gap')}, the longest ${duration(longest)}, after ${lines(at, n)}.`,
  }),
  'irregular-spacing': () => ({ text: 'The readings are not evenly spaced.' }),
  'coarse-steps': ({ step }) => ({
    text: `The logger shows only steps of ${kelvins(step)}; small falls are hard to see with it.`,
  }),
  'no-time-column': () => ({
    text: 'No column of times was found.',
    remedy: 'Name it in house.json: "columns": { "time": "…" } beside the file.',
  }),
  'start-not-told': () => ({
    text: 'The times count from a start, and the file does not say when that was or in what steps.',
    remedy: 'Export the log with date and time, or with its start and interval above the header.',
  }),
  'column-not-found': ({ wanted, headers }) => ({
    text: `There is no column “${wanted}”.`,
    remedy: `The file has ${list(headers)}.`,
  }),
  'no-readings': () => ({
    text: 'The file has a header but no readings.',
    remedy: 'Export it from the logger again.',
  }),
  'times-not-understood': ({ said }) => ({
    text: `The file has readings, but their times were not understood: “${said}”.`,
    remedy: 'Export it with date and time such as 2026-01-25 18:00.',
  }),
  'no-known-column': ({ headers }) => ({
    text: 'No column could be told to be a temperature or another known quantity.',
    remedy: `Name it in house.json: "columns": { "temperature": "…" }. The file has ${list(headers)}.`,
  }),
  'rows-left-out': ({ count: n, lines: at, why }) => ({
    text: `${count(n, 'row')} left out for want of ${why === 'no time' ? 'a time' : why === 'no value' ? 'a value' : 'the right number of fields'}: ${lines(at, n)}.`,
  }),
  'summary-left-out': ({ count: n, lines: at }) => ({
    text: `${count(n, 'line')} at the end, a summary of the record, left out: ${lines(at, n)}.`,
  }),
  'columns-moved': ({ count: n, lines: at, notRead }) => ({
    text:
      `The header comes again with other columns (${lines(at, n)}); the rows below were put back in the first order` +
      `${notRead.length > 0 ? `, and ${list(notRead)} not read` : ''}.`,
  }),
  'rows-repeated': ({ count: n, lines: at }) => ({
    text: `${count(n, 'repeated row')} counted once: ${lines(at, n)}.`,
  }),
  'values-conflict': ({ count: n, lines: at }) => ({
    text: `${count(n, 'instant')} with two different values; the first was kept: ${lines(at, n)}.`,
    remedy: 'Take the wrong rows out of the file if the first is not the right one.',
  }),
  'times-collapse': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} have the time of another row and a different value (${lines(at, n)}): the time was not read whole, or the file holds several sensors below each other.`,
    remedy:
      'Name the columns of date and time in house.json: "columns": { "date": "…", "time": "…" } beside the file; bring each sensor in a file of its own.',
  }),
  'second-time-column': ({ notRead }) => ({
    text: `This is a second column of times, and they differ from the first; what belongs to it was not read: ${list(notRead)}.`,
    remedy:
      'Enter the file once more for them, and name the columns: "columns": { "time": "…", "temperature": "…" }.',
  }),
  'dates-contradict': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} seem to have day and month the other way round than the rest of the file, as a spreadsheet leaves them (${lines(at, n)}): read as they stand, the record jumps to and fro.`,
    remedy: 'Export the log again and do not save it from a spreadsheet.',
  }),
  'rows-out-of-order': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} out of order were sorted: ${lines(at, n)}.`,
  }),
  'local-time-missing': ({ count: n, lines: at, timeZone }) => ({
    text: `${count(n, 'row')} stand in the hour that the spring clock change leaves out in ${timeZone}: ${lines(at, n)}.`,
    remedy:
      'If the logger does not change its clock, say so: "timeZone": "UTC" (or its fixed zone) beside the file.',
  }),
  'date-order-unknown': ({ taken }) => ({
    text: `The file does not tell whether the day or the month comes first; it was read ${taken}.`,
    remedy: 'Say it: "read": { "dateOrder": "day-first" } or "month-first" beside the file.',
  }),
  'serial-days-guessed': ({ taken }) => ({
    text: `The times are a spreadsheet’s days; they were counted from ${taken}, and are four years and a day off if they count from ${taken === 1900 ? 1904 : 1900}.`,
    remedy: 'Compare the first date with what you know; export the log with written dates if it is wrong.',
  }),
  'zone-ambiguous': ({ said, taken }) => ({
    text: `“${said}” stands for several time zones of the world; ${taken} was taken.`,
    remedy: 'Say it: "timeZone": "…" beside the file.',
  }),
  'clock-reset': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} with a date years away from all others, as a logger gives after a change of battery, were left out: ${lines(at, n)}.`,
  }),
  'temperature-unit-guessed': ({ taken }) => ({
    text: `The file does not name the unit of its temperatures; they were taken as ${taken === 'K' ? 'kelvin' : `°${taken}`}.`,
    remedy: 'Say it: "read": { "unit": "C" } or "F" beside the file.',
  }),
  'decimal-mark-guessed': ({ taken }) => ({
    text: `Every marked number has three digits behind its mark, which may stand before decimals or between thousands; “1${taken}234” was read as a little more than one.`,
    remedy: 'Say it: "read": { "decimal": "," } or "." beside the file.',
  }),
  'unit-assumed': ({ taken }) => ({
    text: `The file does not name the unit of its power; it was taken as ${taken}, but the values are so small that they could be kW.`,
    remedy: 'Say "unit": "W" or "kW" beside it in house.json, or write the unit into the header.',
  }),
  'other-unit-left-out': ({ said, count: n, lines: at }) => ({
    text: `${count(n, 'value')} in a unit of something else than the column holds (“${said}”) ${n === 1 ? 'was' : 'were'} left out: ${lines(at, n)}.`,
  }),
  'doubled-hour-once': ({ count: n, lines: at, timeZone }) => ({
    text: `The record runs through the autumn clock change of ${timeZone}, but has the doubled hour only once (${count(n, 'row')}, ${lines(at, n)}): its clock may not change.`,
    remedy:
      'If the logger does not change its clock, say so: "timeZone": "UTC" (or its fixed zone) beside the file.',
  }),
  'unit-doubted': ({ stated, taken }) => ({
    text: `The file says °${stated}, but no air at a house has these values in it: they look like °F. They were taken as °${taken}.`,
    remedy: 'Say which it is: "read": { "unit": "F" } or "C" beside the file.',
  }),
  'quantity-guessed': ({ taken }) => ({
    text: `The header does not say what this column holds; from its values it was taken as ${taken}.`,
    remedy: `Name it in house.json: "columns": { "${taken}": "…" } beside the file.`,
  }),
  'all-zero-column-left-out': () => ({ text: 'This column is zero all through and was left out.' }),
  'sentinels-left-out': ({ value, count: n, lines: at }) => ({
    text: `${count(n, 'value')} of ${value} mean “no reading” and were left out: ${lines(at, n)}.`,
  }),
};
