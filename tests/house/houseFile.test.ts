import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readHouse } from '../../src/houseFile.ts';

const least = {
  name: 'A house',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [{ file: 'in.csv', place: 'inside' }],
};
const problemsOf = (house: unknown) => {
  const reading = readHouse(JSON.stringify(house, null, 2));
  return reading.kind === 'problems' ? reading.problems : [];
};

test('a name, a place and a logger are enough', () => {
  expect(readHouse(JSON.stringify(least)).kind).toBe('house');
});

test('every key of the contract is accepted', () => {
  const whole = {
    ...least,
    floorAreaM2: 96,
    volumeM3: 240,
    loggers: [
      {
        file: 'a/living.csv',
        place: 'inside',
        room: 'Living room',
        volumeM3: 60,
        columns: { time: 'Date', temperature: 'T1', humidity: 'RH' },
        timeZone: 'UTC',
        clockOffsetMin: 3,
        temperatureOffsetK: -0.2,
        read: { dateOrder: 'day-first', decimal: ',', unit: 'F', stamp: 'start' },
        putBack: [{ from: '2027-01-02', to: '2027-01-03', why: 'sound after all' }],
        leaveOut: [{ from: '2027-01-02T10:00', to: '2027-01-02T11:00', why: 'carried about' }],
      },
      { file: 'wall.csv', place: 'surface', element: 'External walls' },
      { file: 'next.csv', place: 'adjacent' },
      { file: 'void.csv', place: 'void' },
      { file: 'out.csv', place: 'outside' },
    ],
    coLocation: { from: '2027-01-02T12:00', to: '2027-01-03T12:00' },
    weather: [{ file: 'weather.csv', columns: { windSpeed: 'wind' } }],
    heat: [
      { file: 'heater.csv', kind: 'power', part: 0.9 },
      { file: 'gas.csv', kind: 'meter', unit: 'm3', kWhPerUnit: 10.6 },
      { from: '2027-01-20T17:00', to: '2027-01-20T23:00', energyKWh: 11.8, plusMinusPercent: 2 },
    ],
    nights: [{ date: '2027-01-09', used: false, why: 'hatch left open' }],
    notes: [{ at: '2027-01-09T21:00', text: 'loft hatch open' }],
    conditions: {
      ventsClosed: true,
      openToNeighbour: false,
      neighbour: { temperatureC: 20, plusMinusK: 2 },
      wetTradesWithinWeeks: 3,
      insideC: 20,
    },
    constantGainsW: 0,
    stages: [
      { name: 'Before', from: '2027-01-04', to: '2027-01-18', missing: ['Windows'], complete: false },
      { name: 'After', from: '2027-01-20', to: '2027-02-03' },
    ],
    elements: [
      {
        name: 'External walls',
        areaM2: 120,
        uValue: 0.18,
        airGapLevel: 1,
        fasteners: { perM2: 2.5, areaMm2: 12.5, conductivityWmK: 17 },
      },
      {
        name: 'Pitched roof',
        areaM2: 80,
        tiltDeg: 40,
        buildUp: {
          facing: 'up',
          layers: [
            {
              name: 'gypsum board',
              thicknessMm: 15,
              conductivityWmK: 0.25,
              densityKgM3: 900,
              specificHeatJkgK: 1000,
              vapourResistance: 10,
            },
            {
              name: 'wool between rafters',
              thicknessMm: 140,
              conductivityWmK: 0.035,
              bridge: {
                name: 'rafter',
                widthMm: 45,
                spacingMm: 600,
                extraFraction: 0.01,
                conductivityWmK: 0.13,
              },
            },
            { name: 'membrane', resistanceM2KW: 0, sdM: 0.1 },
            { name: 'batten space', thicknessMm: 25, air: 'slightly', openingMm2PerM: 900 },
          ],
        },
      },
      { name: 'Windows', areaM2: 18, uValue: 1.2, gValue: 0.5, orientationDeg: 180, room: 'Living room' },
      { name: 'Ground floor', areaM2: 48, uValue: 0.15, to: 'ground', perimeterM: 28 },
      { name: 'Ceiling', areaM2: 10, uValue: 0.15, to: 'void', temperatureFactor: 0.9 },
      { name: 'Front door', areaM2: 2, uValue: 1.4, limitKind: 'door', massClass: 'light' },
    ],
    partitions: [{ name: 'Stud walls', areaM2: 90, buildUp: { layers: [] } }],
    thermalBridges: { psiLengthWK: 6.5 },
    ventilation: { airPermeability50: 4, divisor: 20, asTestedAirChangesPerHour: 0.2, heatRecovery: 0.8 },
    allowance: 0.15,
    heatCapacity: { kJPerM2K: 110 },
    limits: {
      name: 'Our own',
      dated: '2026-03-01',
      note: 'For conversions.',
      uValues: {
        roof: 0.15,
        wall: 0.2,
        floor: 0.18,
        'party wall': 0.2,
        window: 1.4,
        'roof window': 1.5,
        rooflight: 2,
        door: 1.4,
      },
    },
  };
  expect(problemsOf(whole)).toEqual([]);
});

describe('a mistake', () => {
  test('in a key is told with its line and the key that was meant', () => {
    expect(problemsOf({ ...least, elements: [{ name: 'Walls', aeraM2: 120, uValue: 0.18 }] })).toContainEqual(
      expect.objectContaining({
        code: 'key-unknown',
        key: 'aeraM2',
        nearest: 'areaM2',
        where: { file: 'house.json', key: 'elements[0].aeraM2', line: 17 },
      }),
    );
  });

  test('in a value is told with what was found and what is expected', () => {
    expect(problemsOf({ ...least, floorAreaM2: '96' })).toEqual([
      {
        code: 'value-unexpected',
        found: '"96"',
        expected: 'a number',
        where: { file: 'house.json', key: 'floorAreaM2', line: 14 },
      },
    ]);
  });

  test('comes with all the others at once', () => {
    const problems = problemsOf({
      name: '',
      loggers: [{ file: '../../etc/passwd', place: 'inner' }],
      stages: [{ name: 'A', from: '2027-02-30', to: '2027-01-01' }],
    });
    expect(problems.map(({ where }) => where.key)).toEqual(
      expect.arrayContaining(['name', 'location', 'loggers[0].file', 'loggers[0].place', 'stages[0].from']),
    );
  });

  test('in the JSON itself is told with its line', () => {
    const reading = readHouse('{\n  "name": "A house",\n  "location": {,\n}');
    expect(reading.kind === 'problems' && reading.problems[0]).toMatchObject({
      code: 'json-broken',
      where: { line: 3 },
    });
  });

  test('two hundred thousand nested brackets are told, not fallen over', () => {
    const reading = readHouse(`{\n"name": ${'['.repeat(200_000)}`);
    expect(reading.kind === 'problems' && reading.problems).toMatchObject([
      { code: 'json-broken', where: { line: 2 } },
    ]);
  });

  test.each([
    [
      'a heat capacity per floor area without the floor area',
      { heatCapacity: { kJPerM2K: 110 } },
      'floorAreaM2',
    ],
    ['ventilation without the volume', { ventilation: { airChangesPerHour: 0.5 } }, 'volumeM3'],
    [
      'an element with neither U-value nor layers',
      { elements: [{ name: 'W', areaM2: 1 }] },
      'elements[0].uValue',
    ],
    [
      'a stage that misses an element nobody drew',
      { stages: [{ name: 'A', from: '2027-01-01', to: '2027-01-09', missing: ['Dome'] }] },
      'stages[0].missing[0]',
    ],
    [
      'a time zone that does not exist',
      { location: { latitude: 1, longitude: 1, timeZone: 'Europe/Nowhere' } },
      'location.timeZone',
    ],
    [
      'a heater with both a file and a stated energy',
      { heat: [{ file: 'h.csv', kind: 'power', energyKWh: 3 }] },
      'heat[0].energyKWh',
    ],
    [
      'a rafter wider than its spacing',
      {
        elements: [
          {
            name: 'R',
            areaM2: 1,
            buildUp: {
              layers: [
                {
                  name: 'w',
                  thicknessMm: 100,
                  conductivityWmK: 0.04,
                  bridge: { name: 'r', widthMm: 700, spacingMm: 600, conductivityWmK: 0.13 },
                },
              ],
            },
          },
        ],
      },
      'elements[0].buildUp.layers[0].bridge.widthMm',
    ],
  ])('%s is refused at its key', (_, extra, key) => {
    expect(problemsOf({ ...least, ...extra }).map(({ where }) => where.key)).toContain(key);
  });
});

test('no text makes the reader throw, and whatever is no house has a problem to show', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
      const reading = readHouse(text);
      expect(reading.kind === 'house' || reading.problems.length > 0).toBe(true);
    }),
  );
});
