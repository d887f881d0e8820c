/** What a logger on the inside face of a wall tells of it: invented walls with known truth. */
import { describe, expect, test } from 'vitest';
import { assessRecord } from '../../src/assess.ts';
import { assessmentSchema } from '../../src/assessment.ts';
import type { StageNights } from '../../src/cooling/index.ts';
import { judgeNights } from '../../src/cooling/index.ts';
import { designOf } from '../../src/fabric/index.ts';
import { surfaceHints } from '../../src/heatloss/index.ts';
import type { House } from '../../src/house.ts';
import { reportOf } from '../../src/report.ts';
import { timeAt } from '../../src/series/grid.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { say } from '../../src/words/index.ts';
import { HOUR, midnight, nightsOf, place, recordOf } from '../cooling/nightsAtHand.ts';

interface Wall {
  /** [m], [W/(mK)], [J/(m³K)] */
  readonly thickness: number;
  readonly conductivity: number;
  readonly capacity: number;
  /** Of the explicit scheme, stable below width²·capacity / (2·conductivity) [s]. */
  readonly step?: number;
}
/** COMPUTED, ISO 6946 for one layer: U = 1 / (0.13 + d/λ + 0.04). Bare stone 2.21, insulated block 0.31 W/(m²K). */
const stone: Wall = { thickness: 0.45, conductivity: 1.6, capacity: 2000e3 };
const insulated: Wall = { thickness: 0.4, conductivity: 0.13, capacity: 600e3 };
const transmittanceOf = ({ thickness, conductivity }: Wall) => 1 / (0.13 + thickness / conductivity + 0.04);

/** The inside face of a wall cut into twenty cells, stepped explicitly, steady to begin with. */
function faceTemperature(wall: Wall, inside: (t: number) => number, outside: (t: number) => number) {
  const cells = 20;
  const width = wall.thickness / cells;
  const { step = 30 } = wall;
  const between = wall.conductivity / width;
  const toAir = (film: number) => 1 / (film + width / 2 / wall.conductivity);
  const [inner, outer] = [toAir(0.13), toAir(0.04)];
  const at0 = transmittanceOf(wall) * (inside(midnight) - outside(midnight));
  const temperature = Array.from(
    { length: cells },
    (_, i) => inside(midnight) - at0 * (0.13 + ((i + 0.5) * width) / wall.conductivity),
  );
  let now = midnight;
  return (t: number) => {
    for (; now < t; now += step) {
      const flow = [
        inner * (inside(now) - temperature[0]),
        ...temperature.slice(1).map((it, i) => between * (temperature[i] - it)),
        outer * (temperature[cells - 1] - outside(now)),
      ];
      for (let i = 0; i < cells; i++)
        temperature[i] += (step * (flow[i] - flow[i + 1])) / (width * wall.capacity);
    }
    return inside(t) - 0.13 * inner * (inside(t) - temperature[0]);
  };
}

const kept = () => 20;
const winter = (t: number) => 4 + 3 * Math.sin((2 * Math.PI * (t - midnight)) / (24 * HOUR));

function recorded(wall: Wall, more: Partial<HouseRecord> = {}, days = 9, outside = winter): HouseRecord {
  const face = faceTemperature(wall, kept, outside);
  const record = recordOf({
    days,
    outside,
    inside: kept,
    rooms: [
      { room: 'Hall', place: 'inside', temperature: kept },
      { room: 'Outside', place: 'outside', temperature: outside },
      { room: 'Hall', place: 'surface', temperature: face },
    ],
  });
  // two loggers off by 0.2 K each, as a standard deviation
  return { ...record, differenceSd: 0.2 * Math.SQRT2, ...more };
}

const houseOf = (wall: Wall, more: object = {}, logger: object = { element: 'Wall' }): House => ({
  name: 'Invented',
  location: place,
  loggers: [
    { file: 'Hall.csv', place: 'inside', room: 'Hall' },
    { file: 'Outside.csv', place: 'outside' },
    { file: 'Hall.csv', place: 'surface', room: 'Hall', ...logger },
  ],
  elements: [
    {
      name: 'Wall',
      areaM2: 20,
      buildUp: {
        layers: [
          {
            name: 'one layer',
            thicknessMm: wall.thickness * 1000,
            conductivityWmK: wall.conductivity,
            densityKgM3: wall.capacity / 1000,
            specificHeatJkgK: 1000,
          },
        ],
      },
      ...more,
    },
  ],
});

function stageOf(record: HouseRecord): StageNights {
  const nights = judgeNights(record, nightsOf(record));
  const [from, to] = [record.grid.start, timeAt(record.grid, record.grid.length - 1)];
  return { name: 'all', from, to, complete: true, missing: [], nights, crossing: [] };
}

function hintOf(house: House, record: HouseRecord) {
  const [hint, ...more] = surfaceHints(house, record, designOf(house), stageOf(record));
  expect(more).toEqual([]);
  return { ...hint, codes: hint.notes.map(({ code }) => code) };
}

describe('a bare stone wall under a daily swing of 6 K', () => {
  const hint = hintOf(houseOf(stone), recorded(stone));

  test('reads its transmittance within 2 %, beside the same as drawn', () => {
    // whole periods of the swing: what is left is the explicit step and the dawns that move by a minute a day
    expect(Math.abs((hint.transmittance?.value ?? 0) / transmittanceOf(stone) - 1)).toBeLessThan(0.02);
    expect(hint.designTransmittance).toBeCloseTo(transmittanceOf(stone), 9);
  });

  test('is accepted by the rules, with an interval of a quarter to a half either way', () => {
    expect(hint.accepted).toBe(true);
    const { value = 0, low = 0, high = 0 } = hint.transmittance ?? {};
    expect((high - low) / 2 / value).toBeGreaterThan(0.25);
    expect((high - low) / 2 / value).toBeLessThan(0.5);
  });

  test('says that there is no heat-flux plate, whole days were read and the sun is not known', () => {
    expect(hint.codes).toEqual(['surface-days-read', 'surface-sun-not-known', 'surface-resistance-assumed']);
  });
});

test('a well insulated wall: the interval is too wide to say anything, and that is said', () => {
  const hint = hintOf(houseOf(insulated), recorded(insulated));
  expect(Math.abs((hint.transmittance?.value ?? 0) / transmittanceOf(insulated) - 1)).toBeLessThan(0.02);
  expect(hint.accepted).toBe(false);
  expect(hint.codes).toContain('surface-too-wide');
  const note = hint.notes.find(({ code }) => code === 'surface-too-wide');
  // COMPUTED: Ti − Tsi = 0.13·U·16 K = 0.13·0.308·16 = 0.64 K; 1.96·√(0.2² + 0.2² + 0.2²) = 0.68 K
  expect(note && say(note).text).toContain('0.64 K apart, and the loggers may be off by 0.68 K');
});

test('loggers that lay side by side narrow it', () => {
  const width = (differenceSd: number) => {
    const it = hintOf(houseOf(insulated), recorded(insulated, { differenceSd })).transmittance;
    return (it?.high ?? 0) - (it?.low ?? 0);
  };
  expect(width(0.05)).toBeLessThan(0.7 * width(0.28));
});

test('outdoors that grows colder day by day: the stored heat still tells, and the rules refuse it', () => {
  const falling = (t: number) => 12 - (2 * (t - midnight)) / (24 * HOUR);
  const hint = hintOf(houseOf(stone), recorded(stone, {}, 5, falling));
  expect(hint.accepted).toBe(false);
  expect(hint.codes).toContain('surface-rule-storage');
});

test('two days are too few', () => {
  expect(hintOf(houseOf(stone), recorded(stone, {}, 3)).codes).toContain('surface-rule-duration');
});

describe('the sun', () => {
  const irradiance = (record: HouseRecord, sunnyUntil: number) =>
    Float64Array.from({ length: record.grid.length }, (_, i) =>
      timeAt(record.grid, i) < midnight + sunnyUntil * HOUR ? 120 : 10,
    );
  const record = recorded(stone);

  test('days on which it shone are left out of a wall that it reaches', () => {
    const sunny = { ...record, irradiance: irradiance(record, 240) };
    expect(hintOf(houseOf(stone), sunny).codes).toContain('surface-no-steady-hours');
    expect(hintOf(houseOf(stone, { orientationDeg: 180 }), sunny).transmittance).toBeNull();
    const half = { ...record, irradiance: irradiance(record, 60) };
    expect(hintOf(houseOf(stone), half).transmittance).not.toBeNull();
  });

  test('does not reach a wall that faces north in Europe, or south beyond the equator', () => {
    const sunny = { ...record, irradiance: irradiance(record, 240) };
    const north = houseOf(stone, { orientationDeg: 20 });
    expect(hintOf(north, sunny).transmittance).not.toBeNull();
    const south = houseOf(stone, { orientationDeg: 180 });
    const beyond = { ...south, location: { ...south.location, latitude: -40 } };
    expect(hintOf(beyond, sunny).transmittance).not.toBeNull();
  });
});

describe('nothing is read, and it is said why', () => {
  const record = recorded(stone);

  test('where no element is named', () => {
    expect(hintOf(houseOf(stone, {}, {}), record).codes).toEqual(['surface-without-element']);
  });

  test('on a floor on the ground, and where no logger is behind an element to a void', () => {
    expect(hintOf(houseOf(stone, { to: 'ground' }), record).codes).toEqual(['surface-on-ground']);
    expect(hintOf(houseOf(stone, { to: 'void' }), record).codes).toEqual(['surface-far-side-unknown']);
  });

  test('where the wall is warmer than the air', () => {
    const warmer = record.rooms.map((room) =>
      room.place === 'surface' ? { ...room, temperature: room.temperature.map((it) => it + 6) } : room,
    );
    const hint = hintOf(houseOf(stone), { ...record, rooms: warmer });
    expect(hint.transmittance).toBeNull();
    expect(hint.codes[0]).toBe('surface-warmer-than-air');
  });

  test('where inside and outside are less than 5 K apart', () => {
    expect(
      hintOf(
        houseOf(stone),
        recorded(stone, {}, 9, () => 16),
      ).codes,
    ).toContain('surface-no-steady-hours');
  });
});

test('a light wall is read from its nights', () => {
  const light: Wall = { thickness: 0.1, conductivity: 0.2, capacity: 100e3, step: 4 };
  const hint = hintOf(houseOf(light), recorded(light));
  expect(hint.codes).toContain('surface-nights-read');
  expect(Math.abs((hint.transmittance?.value ?? 0) / transmittanceOf(light) - 1)).toBeLessThan(0.05);
});

test('without an inside logger in its room the mean of the house stands in, and the interval is wider', () => {
  const record = recorded(stone);
  const elsewhere = {
    ...record,
    rooms: record.rooms.map((it) => (it.place === 'inside' ? { ...it, room: 'Kitchen' } : it)),
  };
  const [own, mean] = [hintOf(houseOf(stone), record), hintOf(houseOf(stone), elsewhere)];
  expect(mean.codes).toContain('surface-room-without-logger');
  const width = (it: typeof own) => (it.transmittance?.high ?? 0) - (it.transmittance?.low ?? 0);
  expect(width(mean)).toBeGreaterThan(width(own));
});

test('the JSON has one entry for each surface logger, with the units in the keys', () => {
  const [house, record] = [houseOf(stone), recorded(stone)];
  const assessment = reportOf({ house, accounts: [], record, ...assessRecord(house, record) });
  expect(assessmentSchema.parse(assessment).stages[0].surfaces).toMatchObject([
    { logger: 'Hall.csv', room: 'Hall', element: 'Wall', accepted: true },
  ]);
  // COMPUTED, as printed beside the walls: 2.21 W/(m²K)
  expect(assessment.stages[0].surfaces?.[0].designUValue).toBeCloseTo(2.21, 1);
  expect(assessment.stages[0].surfaces?.[0].uValueWM2K?.value).toBeCloseTo(2.21, 1);
});
