/** Small logs in many layouts, each an invention of ours, with the readings that a person would take from it. */
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../src/assessment.ts';
import type { LogFinding, LogHints } from '../../src/logs/index.ts';
import { channelsOf, codesOf, read } from './reading.ts';

interface Case {
  readonly what: string;
  readonly file: string | Uint8Array;
  readonly hints?: Partial<LogHints>;
  /** Of every channel, as they stand. */
  readonly times: readonly string[];
  readonly values: readonly (readonly [column: string, quantity: Quantity, values: readonly number[]])[];
  readonly findings?: readonly LogFinding['code'][];
}

const lines = (...rows: string[]) => `${rows.join('\n')}\n`;
const utf16 = (text: string, littleEndian: boolean) => {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  Array.from(text, (letter, i) => view.setUint16(2 * i + 2, letter.charCodeAt(0), littleEndian));
  return bytes;
};
const latin1 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

const JANUARY = ['2026-01-25T18:00:00Z', '2026-01-25T18:10:00Z', '2026-01-25T18:20:00Z'];
const WARM: Case['values'][number] = ['Temperature', 'temperature', [21.5, 21.4, 21.25]];
const plain = lines(
  'Time,Temperature',
  '2026-01-25 18:00,21.5',
  '2026-01-25 18:10,21.4',
  '2026-01-25 18:20,21.25',
);

const cases: readonly Case[] = [
  { what: 'commas and ISO times', file: plain, times: JANUARY, values: [WARM] },
  { what: 'a byte order mark', file: `\ufeff${plain}`, times: JANUARY, values: [WARM] },
  { what: 'UTF-16, little endian', file: utf16(plain, true), times: JANUARY, values: [WARM] },
  { what: 'UTF-16, big endian', file: utf16(plain, false), times: JANUARY, values: [WARM] },
  { what: 'CRLF', file: plain.replaceAll('\n', '\r\n'), times: JANUARY, values: [WARM] },
  { what: 'CR alone', file: plain.replaceAll('\n', '\r'), times: JANUARY, values: [WARM] },
  {
    what: 'Windows-1252 with a degree sign',
    file: latin1(plain.replace('Temperature', 'Raum [°C]')),
    times: JANUARY,
    values: [['Raum [°C]', 'temperature', [21.5, 21.4, 21.25]]],
  },
  {
    what: 'semicolons, decimal commas, dotted dates, German headers',
    file: lines(
      'Datum/Uhrzeit;Temperatur °C;rel. Feuchte %',
      '25.01.2026 18:00;21,5;45,0',
      '25.01.2026 18:10;21,4;46,0',
      '25.01.2026 18:20;21,25;',
    ),
    times: JANUARY,
    values: [
      ['Temperatur °C', 'temperature', [21.5, 21.4, 21.25]],
      ['rel. Feuchte %', 'humidity', [0.45, 0.46]],
    ],
  },
  {
    what: 'tabs, month first, twelve-hour clock',
    file: lines(
      'Timestamp\tTemp (F)',
      '01/25/2026 06:00:00 PM\t70.7',
      '01/25/2026 06:10:00 PM\t68.0',
      '01/25/2026 06:20:00 PM\t32',
    ),
    times: JANUARY,
    values: [['Temp (F)', 'temperature', [21.5, 20, 0]]],
  },
  {
    what: 'noon and midnight on a twelve-hour clock',
    file: lines(
      'Time,Temperature',
      '31/01/2026 12:00 AM,1',
      '31/01/2026 12:00 p.m.,2',
      '31/01/2026 1:30 PM,3',
    ),
    times: ['2026-01-31T00:00:00Z', '2026-01-31T12:00:00Z', '2026-01-31T13:30:00Z'],
    values: [['Temperature', 'temperature', [1, 2, 3]]],
  },
  {
    what: 'pipes and padded, quoted numbers',
    file: lines(
      '"time"|"T1"',
      '"2026-01-25T18:00:00Z"|"  21.5000000"',
      '"2026-01-25T18:10:00Z"|" 2.14e+01"',
      '"2026-01-25T18:20:00Z"|"21.25 "',
    ),
    times: JANUARY,
    values: [['T1', 'temperature', [21.5, 21.4, 21.25]]],
  },
  {
    what: 'blanks, date and time apart, a numbered header behind a comment sign',
    file: lines(
      '# 1:Date 2:Time 3:Temperature_Room 4:Wind_Mast',
      '25/01/2026 18:00  21.5 0',
      '25/01/2026 18:10  21.4 2.5',
      '25/01/2026 18:20  21.25 0',
    ),
    times: JANUARY,
    values: [
      ['3:Temperature_Room', 'temperature', [21.5, 21.4, 21.25]],
      ['4:Wind_Mast', 'windSpeed', [0, 2.5, 0]],
    ],
  },
  {
    what: 'blanks, one header over date and time',
    file: lines(
      'When  Temperature',
      '25/01/2026 18:00 21.5',
      '25/01/2026 18:10 21.4',
      '25/01/2026 18:20 21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'blanks inside the headers of a table set with blanks',
    file: lines(
      'Date        Time   Room temperature   Outside humidity',
      '2026-01-25  18:00  21.5               80',
      '2026-01-25  18:10  21.4               81',
      '2026-01-25  18:20  21.25              82',
    ),
    times: JANUARY,
    values: [
      ['Room temperature', 'temperature', [21.5, 21.4, 21.25]],
      ['Outside humidity', 'humidity', [0.8, 0.81, 0.82]],
    ],
  },
  {
    what: 'separate date and time columns in a Spanish spreadsheet',
    file: lines(
      'Fecha;Hora;Humedad (%);Temperatura (°C)',
      '25/01/2026;18:00:00;45;21,5',
      '25/01/2026;18:10:00;46;21,4',
      '25/01/2026;18:20:00;47;21,25',
    ),
    times: JANUARY,
    values: [
      ['Humedad (%)', 'humidity', [0.45, 0.46, 0.47]],
      ['Temperatura (°C)', 'temperature', [21.5, 21.4, 21.25]],
    ],
  },
  {
    what: 'dates that carry a midnight beside a column of times',
    file: lines(
      'Date,Time,Temperature',
      '2026-01-25 00:00:00,18:00,21.5',
      '2026-01-25 00:00:00,18:10,21.4',
      '2026-01-25 00:00:00,18:20,21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'a preamble, a units row and a summary at the end',
    file: lines(
      'Logger;garden shed',
      'Started;2026-01-25 09:00:00',
      '',
      'Time;Temperature;Humidity',
      'UTC;°F;%RH',
      '2026-01-25 18:00;70.7;45',
      '2026-01-25 18:10;68;46',
      '2026-01-25 18:20;32;47',
      'Average;56.9;46',
    ),
    times: JANUARY,
    values: [
      ['Temperature', 'temperature', [21.5, 20, 0]],
      ['Humidity', 'humidity', [0.45, 0.46, 0.47]],
    ],
    findings: ['summary-left-out'],
  },
  {
    what: 'the temperature unit named in the preamble',
    file: lines('# Temperature unit: °F', 'Time,Temperature', '2026-01-25 18:00,50', '2026-01-25 18:10,41'),
    times: JANUARY.slice(0, 2),
    values: [['Temperature', 'temperature', [10, 5]]],
  },
  {
    what: 'no header at all',
    file: lines('2026-01-25 18:00:00,21.5,45', '2026-01-25 18:10:00,21.4,46', '2026-01-25 18:20:00,21.25,47'),
    times: JANUARY,
    values: [
      ['column 2', 'temperature', [21.5, 21.4, 21.25]],
      ['column 3', 'humidity', [0.45, 0.46, 0.47]],
    ],
    findings: ['quantity-guessed', 'quantity-guessed'],
  },
  {
    what: 'rooms as headers',
    file: lines(
      'Time,Kitchen,Loft',
      '2026-01-25 18:00,21.5,9',
      '2026-01-25 18:10,21.4,8.5',
      '2026-01-25 18:20,21.25,8',
    ),
    times: JANUARY,
    values: [
      ['Kitchen', 'temperature', [21.5, 21.4, 21.25]],
      ['Loft', 'temperature', [9, 8.5, 8]],
    ],
    findings: ['quantity-guessed', 'quantity-guessed'],
  },
  {
    what: 'units stuck to the values',
    file: lines(
      'Time,Hall',
      '2026-01-25 18:00,21.5 °C',
      '2026-01-25 18:10,21.4°C',
      '2026-01-25 18:20,21.25 C',
    ),
    times: JANUARY,
    values: [['Hall', 'temperature', [21.5, 21.4, 21.25]]],
  },
  {
    what: 'a header that comes again where two exports were pasted together',
    file: lines(
      'Time,Temperature',
      '2026-01-25 18:00,21.5',
      '2026-01-25 18:10,21.4',
      'Time,Temperature',
      '2026-01-25 18:20,21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'ragged rows: trailing cells missing, trailing separators',
    file: lines(
      'Time,Temperature,Humidity',
      '2026-01-25 18:00,21.5',
      '2026-01-25 18:10,21.4,46,',
      '2026-01-25 18:20,21.25,47,,',
    ),
    times: JANUARY,
    values: [WARM, ['Humidity', 'humidity', [0.46, 0.47]]],
  },
  {
    what: 'row numbers without a header over them',
    file: lines(
      'Time,Temperature',
      '1,2026-01-25 18:00,21.5',
      '2,2026-01-25 18:10,21.4',
      '3,2026-01-25 18:20,21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'epoch seconds',
    file: lines('unix,Temperature', '1769364000,21.5', '1769364600,21.4', '1769365200,21.25'),
    hints: { timeZone: 'America/New_York' },
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'epoch seconds with a fraction',
    file: lines('unix;Temperature', '1769364000.25;21.5', '1769364600.25;21.4', '1769365200.25;21.25'),
    hints: { clockOffset: -0.25 },
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'epoch milliseconds',
    file: lines('timestamp;Temperature', '1769364000000;21,5', '1769364600000;21,4', '1769365200000;21,25'),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'offsets with and without a colon',
    file: lines(
      'Time,Temperature',
      '2026-01-25T19:00:00+01:00,21.5',
      '2026-01-25T19:10:00+0100,21.4',
      '2026-01-25 13:20:00 -05,21.25',
    ),
    hints: { timeZone: 'Europe/London' },
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'a header that states the offset',
    file: plain.replace('Time', 'Time (UTC+02:00)').replaceAll(' 18:', ' 20:'),
    hints: { timeZone: 'Europe/London' },
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'local time of the house, and a clock three minutes slow',
    file: plain.replaceAll(/ 18:(\d)0/g, ' 12:$17'),
    hints: { timeZone: 'America/New_York', clockOffset: 180 },
    times: ['2026-01-25T17:10:00Z', '2026-01-25T17:20:00Z', '2026-01-25T17:30:00Z'],
    values: [WARM],
  },
  {
    what: 'names of months',
    file: lines(
      'Time,Temperature',
      '25-Jan-2026 18:00,21.5',
      '25 enero 2026 18:10,21.4',
      '25. Januar 2026 18:20,21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'two-digit years',
    file: lines('Time;Temperature', '25.01.26 18:00;21,5', '25.01.26 18:10;21,4', '25.01.26 18:20;21,25'),
    times: JANUARY,
    values: [WARM],
    // 25 cannot be a month, but it could be a year
    findings: ['date-order-unknown'],
  },
  {
    what: 'two-digit years first, as the house says',
    file: lines('Time;Temperature', '26/01/25 18:00;21.5', '26/01/25 18:10;21.4', '26/01/25 18:20;21.25'),
    hints: { dateOrder: 'year-first' },
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'newest row first',
    file: lines(
      'Time,Temperature',
      '2026-01-25 18:20,21.25',
      '2026-01-25 18:10,21.4',
      '2026-01-25 18:00,21.5',
    ),
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'a weather station: dew point, wind in km/h, irradiance, pressure, and what is not read',
    file: lines(
      'Date,Outdoor temp,Dew point,Wind speed (km/h),Wind direction,Gust (km/h),Solar radiation (W/m2),Barometer (hPa)',
      '2026-01-25 18:00,5,2,36,180,50,0,1013',
      '2026-01-25 18:10,5.5,2.5,18,190,40,1,1012',
    ),
    times: JANUARY.slice(0, 2),
    values: [
      ['Outdoor temp', 'temperature', [5, 5.5]],
      ['Dew point', 'dewPoint', [2, 2.5]],
      ['Wind speed (km/h)', 'windSpeed', [10, 5]],
      ['Solar radiation (W/m2)', 'irradiance', [0, 1]],
      ['Barometer (hPa)', 'pressure', [101300, 101200]],
    ],
  },
  {
    what: 'carbon dioxide, battery volts, absolute humidity and kelvins',
    file: lines(
      'Time,Temp [K],CO2 (ppm),Battery (V),Absolute humidity (g/m3)',
      '2026-01-25 18:00,293.15,400,3,8',
      '2026-01-25 18:10,273.15,500,2.9,9',
    ),
    times: JANUARY.slice(0, 2),
    values: [
      ['Temp [K]', 'temperature', [20, 0]],
      ['CO2 (ppm)', 'carbonDioxide', [4e-4, 5e-4]],
      ['Battery (V)', 'voltage', [3, 2.9]],
      ['Absolute humidity (g/m3)', 'absoluteHumidity', [0.008, 0.009]],
    ],
  },
  {
    what: 'power in kW',
    file: lines('Time,Heater (kW)', '2026-01-25 18:00,2', '2026-01-25 18:10,0'),
    hints: { expected: 'power' },
    times: JANUARY.slice(0, 2),
    values: [['Heater (kW)', 'power', [2000, 0]]],
  },
  {
    what: 'a nameless column that the house says is energy per interval',
    file: lines('Time,Value', '2026-01-25 18:00,0.5', '2026-01-25 18:10,0.25'),
    hints: { expected: 'energy' },
    times: JANUARY.slice(0, 2),
    values: [['Value', 'energy', [1.8e6, 0.9e6]]],
  },
  {
    what: 'a gas meter in cubic metres',
    file: lines('Time,Gas (m³)', '2026-01-25 18:00,1234.5', '2026-01-25 18:10,1235'),
    hints: { expected: 'meter', energyPerUnit: 4e7 },
    times: JANUARY.slice(0, 2),
    values: [['Gas (m³)', 'meter', [1234.5 * 4e7, 1235 * 4e7]]],
  },
  {
    what: 'thousands marked in a meter reading',
    file: lines('Time;Zählerstand (kWh)', '25.01.2026 18:00;12.345,5', '25.01.2026 18:10;12.346,5'),
    hints: { expected: 'meter' },
    times: JANUARY.slice(0, 2),
    values: [['Zählerstand (kWh)', 'meter', [12345.5 * 3.6e6, 12346.5 * 3.6e6]]],
  },
  {
    what: 'a humidity between 0 and 1',
    file: lines('Time,Temperature,RH', '2026-01-25 18:00,21.5,0.45', '2026-01-25 18:10,21.4,0.46'),
    times: JANUARY.slice(0, 2),
    values: [
      ['Temperature', 'temperature', [21.5, 21.4]],
      ['RH', 'humidity', [0.45, 0.46]],
    ],
  },
  {
    what: 'Fahrenheit that nothing names but its size',
    file: lines('Time,Temperature', '2026-01-25 18:00,68', '2026-01-25 18:10,77'),
    times: JANUARY.slice(0, 2),
    values: [['Temperature', 'temperature', [20, 25]]],
    findings: ['temperature-unit-guessed'],
  },
  {
    what: 'Fahrenheit that the house names',
    file: lines('Time,Temperature', '2026-01-25 18:00,50', '2026-01-25 18:10,41'),
    hints: { temperatureUnit: 'F' },
    times: JANUARY.slice(0, 2),
    values: [['Temperature', 'temperature', [10, 5]]],
  },
  {
    what: 'columns that the house names, in another case and without their number',
    file: lines(
      '1:When,2:North,3:South',
      '2026-01-25 18:00,1,21.5',
      '2026-01-25 18:10,2,21.4',
      '2026-01-25 18:20,3,21.25',
    ),
    hints: { columns: { time: 'when', temperature: ' SOUTH ' } },
    times: JANUARY,
    values: [['3:South', 'temperature', [21.5, 21.4, 21.25]]],
  },
  {
    what: 'a quoted note with a line break and the separator in it',
    file: 'Time,Note,Temperature\n2026-01-25 18:00,"door, open\nwindow shut",21.5\n2026-01-25 18:10,,21.4\n2026-01-25 18:20,"a ""b""",21.25\n',
    times: JANUARY,
    values: [WARM],
  },
  {
    what: 'a stray quote',
    file: lines(
      'Time,Note,Temperature',
      '2026-01-25 18:00,"5 in,21.5',
      '2026-01-25 18:10,,21.4',
      '2026-01-25 18:20,,21.25',
    ),
    times: JANUARY,
    values: [WARM],
  },
];

describe('readLog reads', () => {
  test.each(cases)('$what', ({ file, hints, times, values, findings = [] }) => {
    const reading = read(file, hints);
    const channels = channelsOf(reading);
    expect(codesOf(reading)).toEqual(findings);
    expect(channels.map(([column, quantity]) => [column, quantity])).toEqual(values.map(([c, q]) => [c, q]));
    values.forEach(([, , wanted], i) => {
      const [, , at, got] = channels[i];
      // a channel with gaps has the times of its own readings only, at the end of the record in these files
      expect([times, times.slice(0, -1), times.slice(1)].some((it) => it.join() === at.join())).toBe(true);
      expect(at.length).toBe(wanted.length);
      // units are converted by one product and one sum: rounding only
      got.forEach((value, k) => {
        expect(Math.abs(value - wanted[k])).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(wanted[k])));
      });
    });
  });
});
