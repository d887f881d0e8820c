/** Two records that no one here wrote, read without any hint but the place. What they hold: tests/real-logs. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { houseSchema } from '../../src/house.ts';
import { channelsOf, codesOf, finding, read } from './reading.ts';

const file = (name: string) => readFileSync(new URL(`../real-logs/${name}`, import.meta.url));

describe('the solar house', () => {
  const solar = file('solar-house-2012/solar-house-2012.txt');

  test('gives the role of every column, and none to what is no such quantity', () => {
    // READ: the header, and the description in tests/real-logs/solar-house-2012/README.md
    expect(channelsOf(read(solar)).map(([column, quantity]) => [column, quantity])).toEqual([
      ['3:Temperature_Comedor_Sensor', 'temperature'],
      ['4:Temperature_Habitacion_Sensor', 'temperature'],
      ['5:Weather_Temperature', 'temperature'],
      ['6:CO2_Comedor_Sensor', 'carbonDioxide'],
      ['7:CO2_Habitacion_Sensor', 'carbonDioxide'],
      ['8:Humedad_Comedor_Sensor', 'humidity'],
      ['9:Humedad_Habitacion_Sensor', 'humidity'],
      ['14:Meteo_Exterior_Viento', 'windSpeed'],
      ['18:Meteo_Exterior_Piranometro', 'irradiance'],
      ['22:Temperature_Exterior_Sensor', 'temperature'],
      ['23:Humedad_Exterior_Sensor', 'humidity'],
    ]);
  });

  test('gives every row of the file, the first and the last as they stand in it', () => {
    const reading = read(solar);
    // READ: 2764 lines under the header; first row 13/03/2012 11:45, last row 11/04/2012 06:30
    expect(reading).toMatchObject({ kind: 'read', rows: 2764, rejected: 0, interval: 900 });
    const [, , times, values] = channelsOf(reading)[0];
    expect([times[0], times.at(-1)]).toEqual(['2012-03-13T11:45:00Z', '2012-04-11T06:30:00Z']);
    expect([values[0], values.at(-1)]).toEqual([18.1875, 20.7627]);
    const [, , , wind] = channelsOf(reading)[7];
    // COMPUTED with awk: 473 rows of calm, which are readings
    expect(wind.filter((speed) => speed === 0).length).toBe(473);
  });

  test('has the first zero of its weather column doubted', () => {
    expect(finding(read(solar), 'readings-doubted')).toMatchObject({
      why: 'false-zero',
      count: 1,
      lines: [2],
      where: { column: '5:Weather_Temperature' },
    });
  });

  test('read in local time shows that its clock is not: four rows stand in an hour that does not exist', () => {
    // READ: lines 1115 to 1118 are 25/03/2012 02:00 to 02:45
    expect(finding(read(solar, { timeZone: 'Europe/Madrid' }), 'local-time-missing')).toMatchObject({
      count: 4,
      lines: [1115, 1116, 1117, 1118],
    });
  });

  test('has a house.json of which every named column is found', () => {
    const house = houseSchema.parse(JSON.parse(file('solar-house-2012/house.json').toString()));
    for (const { columns = {} } of [...house.loggers, ...(house.weather ?? [])]) {
      const reading = read(solar, { columns });
      expect(finding(reading, 'column-not-found')).toBeUndefined();
      for (const [quantity, header] of Object.entries(columns)) {
        const holding = channelsOf(reading).filter(([, it]) => it === quantity);
        expect(holding.map(([column]) => column.replace(/^\d+:/, ''))).toEqual([header]);
      }
    }
  });
});

test('the extract of the low-energy house gives nine nodes and the weather station', () => {
  const reading = read(file('low-energy-house-extract.csv'), { timeZone: 'Europe/Brussels' });
  // READ: the header, and the description in tests/real-logs/README.md
  const nodes = Array.from({ length: 9 }, (_, i) => [
    [`T${i + 1}`, 'temperature'],
    [`RH_${i + 1}`, 'humidity'],
  ]).flat();
  expect(channelsOf(reading).map(([column, quantity]) => [column, quantity])).toEqual([
    ...nodes,
    ['T_out', 'temperature'],
    ['Press_mm_hg', 'pressure'],
    ['RH_out', 'humidity'],
    ['Windspeed', 'windSpeed'],
    ['Tdewpoint', 'dewPoint'],
  ]);
  expect(reading).toMatchObject({ rows: 299, rejected: 0 });
  // READ: a random quarter of the rows
  expect(codesOf(reading)).toEqual(['gaps', 'irregular-spacing']);
  const [, , times, values] = channelsOf(reading)[0];
  // READ: the first row is 2016-01-11 17:30:00 (an hour ahead of UTC) with T1 = 19.89
  expect([times[0], values[0]]).toEqual(['2016-01-11T16:30:00Z', 19.89]);
  const pressure = channelsOf(reading)[19][3];
  // READ: 733.79999999999995 mmHg; 1 mmHg = 101325/760 Pa
  expect(pressure[0]).toBeCloseTo((733.8 * 101325) / 760, 6);
});
