/** Heat that is wrong or short: told, and never silently put right. All files are invented. */
import { describe, expect, test } from 'vitest';
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { gatherRecord } from '../../src/record/index.ts';
import { indexAt } from '../../src/series/grid.ts';
import { say } from '../../src/words/index.ts';

const HOUR = 3600;
const DAYS = 10;
const start = Date.UTC(2027, 0, 10) / 1000;
const encode = (text: string) => new TextEncoder().encode(text);

/** Hourly readings from a function of the hours since the start. */
function log(header: string, value: (hours: number) => number, days = DAYS): Uint8Array {
  const rows = Array.from({ length: days * 24 + 1 }, (_, i) => {
    const stamp = new Date((start + i * HOUR) * 1000).toISOString().replace('.000Z', 'Z');
    return `${stamp},${value(i).toFixed(4)}`;
  });
  return encode([`Time,${header}`, ...rows].join('\n'));
}

/** As drawn 1.2 W/(m²K) · 100 m² = 120 W/K; at 15 K it loses 1800 W. */
const house = (heat: House['heat'], extra: Partial<House> = {}): House => ({
  name: 'Invented house',
  location: { latitude: 52, longitude: -1, timeZone: 'UTC' },
  loggers: [
    { file: 'in.csv', place: 'inside' },
    { file: 'out.csv', place: 'outside' },
  ],
  elements: [{ name: 'Walls', areaM2: 100, uValue: 1.2 }],
  heat,
  ...extra,
});

function gathered(of: House, heat: Uint8Array) {
  const files = new Map([
    ['in.csv', log('Temperature (°C)', (h) => 20 + Math.sin(h) / 10)],
    ['out.csv', log('Temperature (°C)', (h) => 5 + Math.sin(h / 4))],
    ['heat.csv', heat],
  ]);
  const result = gatherRecord(of, files);
  if (result.kind === 'no record') throw new Error(`no ${result.missing}`);
  const { record, findings } = result;
  return {
    findings,
    codes: findings.map(({ code }) => code),
    powerAt: (hours: number) =>
      record.heatingPower?.[indexAt(record.grid, start + hours * HOUR)] ?? Number.NaN,
    /** Cells without a known heat, in hours. */
    unknown: (record.heatingPower?.filter(Number.isNaN).length ?? 0) / 6,
  };
}

const wanted = (hours: number) => 1800 + 400 * Math.sin(hours / 5);

describe('heat whose unit cannot be right', () => {
  const power = (unit?: 'W' | 'kW') => house([{ file: 'heat.csv', kind: 'power', ...(unit && { unit }) }]);
  const saidWatts = log('Power (W)', (h) => wanted(h) / 1000);
  const saidKilowatts = log('Power (kW)', wanted);

  test('a column that says W and holds kW is asked about, and is not used until somebody answers', () => {
    const { findings, powerAt } = gathered(power(), saidWatts);
    const doubt = findings.find(({ code }) => code === 'heat-unit-doubted');
    expect(doubt).toMatchObject({ read: 'W', likelier: 'kW' });
    expect(powerAt(30)).toBeNaN();
    expect(doubt && say(doubt).remedy).toContain('"unit": "kW"');
  });

  test('a column that says kW and holds W is asked about the other way', () => {
    const { findings, powerAt } = gathered(power(), saidKilowatts);
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'heat-unit-doubted', read: 'kW', likelier: 'W' }),
    );
    expect(powerAt(30)).toBeNaN();
  });

  test('the answer in house.json is believed, whichever it is', () => {
    const asKilowatts = gathered(power('kW'), saidWatts);
    expect(asKilowatts.codes).not.toContain('heat-unit-doubted');
    // an hourly mean stamped at its end, read in the middle of the hour, to a watt of its printed digits
    expect(Math.abs(asKilowatts.powerAt(30.5) - wanted(31))).toBeLessThan(1);
    const asSaid = gathered(power('W'), saidWatts);
    expect(asSaid.codes).not.toContain('heat-unit-doubted');
    expect(Math.abs(asSaid.powerAt(30.5) - wanted(31) / 1000)).toBeLessThan(0.001);
  });

  test('an answer against the file that no house could burn is asked about, and not used until it is settled', () => {
    const { findings, powerAt } = gathered(power('kW'), log('Power (W)', wanted));
    const doubt = findings.find(({ code }) => code === 'heat-unit-doubted');
    expect(doubt).toMatchObject({ read: 'kW', stated: true, likelier: 'W' });
    expect(powerAt(30)).toBeNaN();
    expect(doubt && say(doubt)).toMatchObject({
      text: expect.stringContaining('as house.json says'),
      remedy: expect.stringContaining('"unit": "W"'),
    });
  });

  test('an answer in kWh is believed of a file that says MJ as well', () => {
    const of = (unit?: 'kWh') => house([{ file: 'heat.csv', kind: 'energy', ...(unit && { unit }) }]);
    const file = log('Energy (MJ)', () => 1.8);
    // 1.8 MJ in an hour are 500 W, 1.8 kWh are 1800 W
    expect(gathered(of(), file).powerAt(30.5)).toBeCloseTo(500, 6);
    expect(gathered(of('kWh'), file).powerAt(30.5)).toBeCloseTo(1800, 6);
  });

  test('energies and running meters are held against the house as well', () => {
    const energy = log('Energy (Wh)', (h) => wanted(h) / 1000);
    expect(gathered(house([{ file: 'heat.csv', kind: 'energy' }]), energy).findings).toContainEqual(
      expect.objectContaining({ code: 'heat-unit-doubted', read: 'Wh', likelier: 'kWh' }),
    );
    const meter = log('Meter (kWh)', (h) => 5000 + 1800 * h);
    expect(gathered(house([{ file: 'heat.csv', kind: 'meter' }]), meter).findings).toContainEqual(
      expect.objectContaining({ code: 'heat-unit-doubted', read: 'kWh', likelier: 'Wh' }),
    );
  });

  test('a house without a design is judged by its floor area; one of unknown size is not judged', () => {
    const { elements: _, ...bare } = power();
    expect(gathered({ ...bare, floorAreaM2: 90 }, saidWatts).codes).toContain('heat-unit-doubted');
    expect(gathered(bare, saidWatts).codes).not.toContain('heat-unit-doubted');
  });

  test.each([
    ['a fridge of 90 W', (h: number) => (h % 3 < 1 ? 90 : 0)],
    ['a heater on for one evening', (h: number) => (h > 40 && h < 46 ? 3000 : 0)],
    ['a boiler six times too large', (h: number) => (h % 6 < 1 ? 11000 : 0)],
    ['a heater that is off', () => 0],
  ])('%s raises no question of units', (_, value) => {
    expect(gathered(power(), log('Power (W)', value)).codes).not.toContain('heat-unit-doubted');
  });

  test('a unit of energy for a power, or of power for a meter, is refused at its key', () => {
    const problems = (kind: 'power' | 'meter', unit: 'kWh' | 'kW') => {
      const read = readHouse(JSON.stringify(house([{ file: 'heat.csv', kind, unit }])));
      return read.kind === 'problems' ? read.problems.map(({ where }) => where.key) : [];
    };
    expect(problems('power', 'kWh')).toEqual(['heat[0].unit']);
    expect(problems('meter', 'kW')).toEqual(['heat[0].unit']);
  });
});

describe('a running meter that is reset', () => {
  const meter = log('Meter (kWh)', (h) => (h < 100 ? 500 + 1.8 * h : 1.8 * (h - 100)));
  const { findings, unknown, powerAt } = gathered(house([{ file: 'heat.csv', kind: 'meter' }]), meter);

  test('is told, once', () => {
    expect(findings).toContainEqual(expect.objectContaining({ code: 'meter-ran-backwards', count: 1 }));
  });

  test('costs the hour of the reset and nothing else', () => {
    // 1.8 kWh in an hour; half a cell more to either side of the hour, and at both ends of the record, is not whole
    expect(powerAt(99.5)).toBeNaN();
    expect(powerAt(98.5)).toBeCloseTo(1800, 1);
    expect(powerAt(100.5)).toBeCloseTo(1800, 1);
    expect(unknown).toBeLessThan(1.6);
  });
});

test('a running meter that was exchanged for one that shows more costs that hour, not the week’s balance', () => {
  const meter = log('Meter (kWh)', (h) => (h < 100 ? 500 : 90_500) + 1.8 * h);
  const { codes, powerAt } = gathered(house([{ file: 'heat.csv', kind: 'meter' }]), meter);
  expect(codes).toContain('meter-ran-backwards');
  expect(codes).not.toContain('heat-unit-doubted');
  expect(powerAt(99.5)).toBeNaN();
  expect(powerAt(98.5)).toBeCloseTo(1800, 1);
  expect(powerAt(100.5)).toBeCloseTo(1800, 1);
});

describe('a heater log shorter than the record', () => {
  const of = house([{ file: 'heat.csv', kind: 'power' }]);

  test('is told with the days that it lacks, and those are not known', () => {
    const { findings, powerAt } = gathered(of, log('Power (W)', wanted, 6));
    const short = findings.find(({ code }) => code === 'heat-shorter-than-record');
    expect(short && say(short).text).toContain('6 days of the record’s 10');
    expect(powerAt(7 * 24)).toBeNaN();
  });

  test('is not told where it is as long, nor of a heater that was logged for one night', () => {
    expect(gathered(of, log('Power (W)', wanted)).codes).not.toContain('heat-shorter-than-record');
    expect(gathered(of, log('Power (W)', wanted, 1)).codes).not.toContain('heat-shorter-than-record');
  });
});
