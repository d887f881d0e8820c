/** A clock against the sun: a real pyranometer, and simulated ones. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLog } from '../../src/logs/index.ts';
import { clockError } from '../../src/sense/clockBySun.ts';
import { type Readings, senseOf } from '../../src/sense/index.ts';
import { HOUR, place, simulatedHouse } from './simulatedHouse.ts';

const file = 'solar-house-2012.txt';
const bytes = readFileSync(new URL(`../real-logs/solar-house-2012/${file}`, import.meta.url));
const valencia = { latitude: 39.5, longitude: -0.4, timeZone: 'Europe/Madrid' };

function solarHouse(timeZone: string) {
  const reading = readLog(file, bytes, { timeZone, clockOffset: 0, columns: {} });
  if (reading.kind !== 'read') throw new Error(`${file} is not read`);
  const channel = (name: string): Readings => {
    const found = reading.channels.find(({ column }) => column.endsWith(name));
    if (found === undefined) throw new Error(`no column ${name}`);
    return { time: found.time, value: found.value };
  };
  const logger = (column: string, where: 'inside' | 'outside') => ({
    file,
    column,
    place: where,
    timeZone,
    temperature: channel(column),
  });
  // READ: the file's README, 15-minute means; the middle of each is 7.5 minutes before its stamp
  const { time, value } = channel('Meteo_Exterior_Piranometro');
  const irradiance = { time: time.map((t) => t - 450), value };
  const loggers = [
    logger('Temperature_Comedor_Sensor', 'inside'),
    logger('Temperature_Habitacion_Sensor', 'inside'),
    logger('Temperature_Exterior_Sensor', 'outside'),
  ];
  return { loggers, irradiance, findings: senseOf(loggers, { file, timeZone, irradiance }, valencia) };
}

describe('the solar house of 2012, whose clock is UTC', () => {
  test('read as UTC raises no question', () => {
    expect(solarHouse('UTC').findings).toEqual([]);
  });

  test('read in local time is an hour behind before the clocks change and two after, and UTC is offered', () => {
    const { findings } = solarHouse('Europe/Madrid');
    expect(findings).toMatchObject([
      { code: 'clock-off-sun', where: { file }, offers: [{ timeZone: 'UTC' }] },
    ]);
    const parts = findings.flatMap((it) => (it.code === 'clock-off-sun' ? it.parts : []));
    expect(parts.map(({ from }) => from)).toHaveLength(2);
    // READ: Madrid is one hour ahead of UTC in winter and two in summer
    for (const [k, hours] of [1, 2].entries()) {
      expect(parts[k].low).toBeLessThanOrEqual(hours * HOUR);
      expect(parts[k].high).toBeGreaterThanOrEqual(hours * HOUR);
      expect(parts[k].low).toBeGreaterThan((hours - 0.5) * HOUR);
    }
  });

  test('read with an offset already given, one number cannot mend both parts and none is offered', () => {
    const { loggers, irradiance } = solarHouse('Europe/Madrid');
    const later = { time: irradiance.time.map((t) => t - 600), value: irradiance.value };
    const weather = { file, clockOffset: -600, irradiance: later };
    const clocks = senseOf(loggers, weather, valencia).filter(({ code }) => code === 'clock-off-sun');
    expect(clocks).toMatchObject([{ offers: [] }]);
  });

  test('any shift of its clock lies within the interval that is found', () => {
    const { irradiance } = solarHouse('UTC');
    const span = { from: irradiance.time[0], to: irradiance.time[irradiance.time.length - 1] };
    fc.assert(
      fc.property(fc.integer({ min: -660, max: 660 }), (minutes) => {
        const ahead = 60 * minutes;
        const found = clockError(
          { time: irradiance.time.map((t) => t + ahead), value: irradiance.value },
          { from: span.from + ahead, to: span.to + ahead },
          valencia,
        );
        expect(found?.low).toBeLessThanOrEqual(-ahead);
        expect(found?.high).toBeGreaterThanOrEqual(-ahead);
      }),
      { numRuns: 15 },
    );
  });
});

describe('a weather station with hourly means', () => {
  test.each([311, 312, 313])('an hour ahead of the sun is found (winter %i)', (seed) => {
    const { loggers, weather } = simulatedHouse(seed);
    const { time, value } = weather.irradiance;
    const ahead = { file: weather.file, irradiance: { time: time.map((t) => t + HOUR), value } };
    expect(senseOf(loggers, ahead, place)).toMatchObject([
      { code: 'clock-off-sun', where: { file: 'weather.csv' }, offers: [{ clockOffsetMin: -60 }] },
    ]);
  });
});

test('the low-energy house in Belgium, with a local clock and no irradiance, raises no question', () => {
  const belgian = readFileSync(new URL('../real-logs/low-energy-house-extract.csv', import.meta.url));
  const brussels = { latitude: 50.5, longitude: 3.8, timeZone: 'Europe/Brussels' };
  const reading = readLog('nodes.csv', belgian, {
    timeZone: brussels.timeZone,
    clockOffset: 0,
    columns: {},
  });
  const channels = reading.kind === 'read' ? reading.channels : [];
  const named = (column: string): Readings => {
    const found = channels.find((it) => it.column === column);
    if (found === undefined) throw new Error(`no column ${column}`);
    return { time: found.time, value: found.value };
  };
  // READ: tests/real-logs/README.md, node 6 hangs outside on the north side
  const loggers = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((node) => ({
    file: `node-${node}.csv`,
    place: node === 6 ? ('outside' as const) : ('inside' as const),
    temperature: named(`T${node}`),
    relativeHumidity: named(`RH_${node}`),
  }));
  expect(senseOf(loggers, null, brussels)).toEqual([]);
  expect(senseOf(loggers, { file: 'station.csv', temperature: named('T_out') }, brussels)).toEqual([]);
});
