/** What stands above the header: kept as notes, and read for what they say of the logger and its clock. */
import { durationIn, secondsPer } from './durationNamed.ts';
import { plainName } from './names.ts';
import { readStamp, readTimeOfDay, type Stamp } from './stamp.ts';
import type { Preamble } from './understood.ts';

export function readPreamble(lines: readonly string[]): Preamble {
  const notes = lines.map(bare).filter((line) => line !== '');
  const said = notes.map(pairOf);
  const value = (key: RegExp) => said.find((pair) => key.test(pair.key) && pair.value !== '')?.value ?? null;
  const intervals = said.filter(({ key }) => INTERVAL.test(key));
  const interval = intervals
    .map((pair) => durationIn(pair.value, secondsPer(pair.unit) ?? 1))
    .find((duration) => duration > 0);
  return {
    lines: notes,
    serial: value(SERIAL),
    logger: value(LOGGER),
    zone: value(ZONE) ?? notes.map((line) => TIMES_IN.exec(line)?.[1]).find(Boolean) ?? null,
    interval: interval ?? null,
  };
}

/** When the record began, where it is said: date and time in one note or in two. */
export function startIn({ lines }: Preamble): Stamp | null {
  const values = lines.map(pairOf).filter(({ key }) => START.test(key));
  const stamps = values.flatMap(({ value }) => readStamp(value) ?? []);
  const whole = stamps.find(({ timed }) => timed);
  if (whole !== undefined) return whole;
  const date = values.find(({ value }) => readStamp(value) !== null)?.value;
  const time = values.find(({ value }) => !Number.isNaN(readTimeOfDay(value)))?.value;
  return date === undefined ? null : readStamp(time === undefined ? date : `${date} ${time}`);
}

/** A line without comment marks, quotes and the separators that a spreadsheet leaves at its end. */
const bare = (line: string) => line.replace(/^[\s#"*!;,/|=-]+|[\s";,|=-]+$/g, '');

function pairOf(line: string) {
  const [, name = '', rest = ''] = /^([^:=;,\t|]+)[:=;,\t|]+\s*(.*)$/.exec(line) ?? [];
  const unit = /[[(](.*?)[\])]/.exec(name)?.[1] ?? '';
  return { key: plainName(name), unit, value: rest.replace(/^["\s:=;,|]+|["\s;,|]+$/g, '') };
}

const SERIAL =
  /\bserial|\bs ?n\b|seriennummer|serien nr|(numero|n|num) de serie|numero di serie|matricola|serienummer/;
const LOGGER =
  /^(data ?)?(logger|device|station|sensor|site|location|room|title|name|geratename|gerat|messstelle|raum|titel|nombre|nom|nome|naam|appareil|equipo|dispositivo)( ?(name|title|label|description|bezeichnung))?$/;
const ZONE =
  /time ?zone|zeitzone|zona horaria|huso|fuseau|fuso orario|fuso horario|tijdzone|\btz\b|(utc|gmt) offset/;
const TIMES_IN = /\b(?:times?|clock|zeiten|horas|heures|orari|tijden)\b.*?\bin\s+((?:utc|gmt)\b.*)$/i;
const INTERVAL =
  /interval|(sampl|logg)(e|ing) (rate|period|time)|log rate|messtakt|\btakt\b|cadence|cadencia|frequenza di camp|periodo de muestreo/;
const START =
  /\b(start|started|begin|began|beginn|launched)\b|^(start|launch) ?(date|time)|startzeit|startdatum|first (sample|reading|record)|\binicio|\bdebut|\binizio|\bcomienzo|aanvang|begintijd/;
