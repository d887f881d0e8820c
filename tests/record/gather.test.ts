import { describe, expect, test } from 'vitest';
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { gatherRecord } from '../../src/record/index.ts';
import { indexAt } from '../../src/series/grid.ts';

const start = Date.UTC(2027, 0, 10, 12) / 1000;
const encode = (text: string) => new TextEncoder().encode(text);
const stamp = (instant: number) => new Date(instant * 1000).toISOString().replace('.000Z', 'Z');

/** A day of readings every so many minutes, from a function of the hours since the start. */
function log(header: string, minutes: number, value: (hours: number) => number | string): Uint8Array {
  const rows = Array.from(
    { length: (24 * 60) / minutes + 1 },
    (_, i) => `${stamp(start + i * minutes * 60)},${value((i * minutes) / 60)}`,
  );
  return encode([`Time,${header}`, ...rows].join('\n'));
}
const steady = (celsius: number) => log('Temperature (°C)', 10, () => celsius);

const house = (extra: Partial<House>): House => ({
  name: 'Test house',
  location: { latitude: 52, longitude: -1, timeZone: 'UTC' },
  loggers: [],
  ...extra,
});

function recordOf(of: House, files: Record<string, Uint8Array>) {
  const gathered = gatherRecord(of, new Map(Object.entries(files)));
  if (gathered.kind === 'no record') throw new Error(`no ${gathered.missing} record`);
  return {
    ...gathered,
    at: (series: Float64Array | null, hours: number) =>
      series?.[indexAt(gathered.record.grid, start + hours * 3600)],
  };
}
const codes = (of: House, files: Record<string, Uint8Array>) =>
  gatherRecord(of, new Map(Object.entries(files))).findings.map(({ code }) => code);

const inside = { file: 'a.csv', place: 'inside' } as const;
const outside = { file: 'o.csv', place: 'outside' } as const;

describe('the inside temperature', () => {
  test('is weighted by the volumes that are stated', () => {
    const of = house({
      loggers: [{ ...inside, volumeM3: 60 }, { file: 'b.csv', place: 'inside', volumeM3: 20 }, outside],
    });
    const { record, at } = recordOf(of, { 'a.csv': steady(20), 'b.csv': steady(16), 'o.csv': steady(5) });
    expect(at(record.insideTemperature, 6)).toBeCloseTo(19, 9); // (60·20 + 20·16) / 80
  });

  test('gives loggers without a volume an even share of what is left of the house', () => {
    const of = house({
      volumeM3: 100,
      loggers: [
        { ...inside, volumeM3: 60 },
        { file: 'b.csv', place: 'inside' },
        { file: 'c.csv', place: 'inside' },
        outside,
      ],
    });
    const { record, at } = recordOf(of, {
      'a.csv': steady(20),
      'b.csv': steady(15),
      'c.csv': steady(10),
      'o.csv': steady(5),
    });
    expect(at(record.insideTemperature, 6)).toBeCloseTo(17, 9); // 0.6·20 + 0.2·15 + 0.2·10
  });

  test('is the logger’s reading with the offset of house.json added', () => {
    const of = house({ loggers: [{ ...inside, temperatureOffsetK: -0.2 }, outside] });
    const { record, at } = recordOf(of, { 'a.csv': steady(20), 'o.csv': steady(5) });
    expect(at(record.insideTemperature, 6)).toBeCloseTo(19.8, 9);
  });

  test('has a gap where readings were left out by hand', () => {
    const leaveOut = [{ from: '2027-01-10T15:00', to: '2027-01-10T19:00', why: 'carried about' }];
    const { record, at } = recordOf(house({ loggers: [{ ...inside, leaveOut }, outside] }), {
      'a.csv': steady(20),
      'o.csv': steady(5),
    });
    expect(at(record.insideTemperature, 5)).toBeNaN();
    expect(at(record.insideTemperature, 9)).toBeCloseTo(20, 9);
  });
});

describe('the outdoor temperature', () => {
  test('is the weather’s where no logger was outside, and that is said', () => {
    const of = house({ loggers: [inside], weather: [{ file: 'w.csv' }] });
    const files = { 'a.csv': steady(20), 'w.csv': steady(4) };
    const { record, at } = recordOf(of, files);
    expect(at(record.outsideTemperature, 6)).toBeCloseTo(4, 9);
    expect(codes(of, files)).toContain('outside-from-weather');
  });

  test('is the weather’s only where the outside logger has a gap', () => {
    const broken = log('Temperature (°C)', 10, (hours) => (hours > 8 && hours < 12 ? '' : 5));
    const of = house({ loggers: [inside, outside], weather: [{ file: 'w.csv' }] });
    const { record, at } = recordOf(of, { 'a.csv': steady(20), 'o.csv': broken, 'w.csv': steady(4) });
    expect(at(record.outsideTemperature, 6)).toBeCloseTo(5, 9);
    expect(at(record.outsideTemperature, 10)).toBeCloseTo(4, 9);
  });

  test('of hourly means stamped at their end stands in the middle of each hour', () => {
    // A mean over the hour that ends at h of a temperature rising 1 K an hour is h − 0.5.
    const hourly = log('Temperature (°C)', 60, (hours) => hours - 0.5);
    const of = house({ loggers: [inside], weather: [{ file: 'w.csv' }] });
    const { record, at } = recordOf(of, { 'a.csv': steady(20), 'w.csv': hourly });
    expect(at(record.outsideTemperature, 6)).toBeCloseTo(6, 9);
  });
});

describe('metered heat', () => {
  const loggers = [inside, outside];
  const files = { 'a.csv': steady(20), 'o.csv': steady(5) };

  test('stated by eye is known while it lasts and not known otherwise', () => {
    const of = house({
      loggers,
      heat: [{ from: '2027-01-10T17:00', to: '2027-01-10T23:00', energyKWh: 12 }],
    });
    const { record, at } = recordOf(of, files);
    expect(at(record.heatingPower, 8)).toBeCloseTo(2000, 9);
    expect(at(record.heatingPower, 2)).toBeNaN();
  });

  test('from a running meter in kWh is the power between its readings, times the part that warms the house', () => {
    const meter = log('Meter (kWh)', 10, (hours) => 500 + 1.5 * hours);
    const of = house({ loggers, heat: [{ file: 'm.csv', kind: 'meter', part: 0.8 }] });
    const { record, at } = recordOf(of, { ...files, 'm.csv': meter });
    expect(at(record.heatingPower, 6)).toBeCloseTo(1200, 6);
  });

  test('from a gas meter in cubic metres takes the energy in each from house.json', () => {
    const meter = log('Meter (m3)', 10, (hours) => 100 + 0.2 * hours);
    const of = house({ loggers, heat: [{ file: 'm.csv', kind: 'meter', unit: 'm3', kWhPerUnit: 10.5 }] });
    const { record, at } = recordOf(of, { ...files, 'm.csv': meter });
    expect(at(record.heatingPower, 6)).toBeCloseTo(2100, 6);
  });

  test('as energy per interval is spread over the interval that it ends', () => {
    const energies = log('Energy (kWh)', 30, () => 0.5);
    const of = house({ loggers, heat: [{ file: 'e.csv', kind: 'energy' }] });
    const { record, at } = recordOf(of, { ...files, 'e.csv': energies });
    expect(at(record.heatingPower, 6)).toBeCloseTo(1000, 6);
  });

  test('as energies with a row lost is not known there, and right elsewhere', () => {
    const lost = log('Energy (kWh)', 60, () => 1);
    const text = new TextDecoder().decode(lost).split('\n');
    text.splice(8, 1);
    const of = house({ loggers, heat: [{ file: 'e.csv', kind: 'energy' }] });
    const { record, at } = recordOf(of, { ...files, 'e.csv': encode(text.join('\n')) });
    expect(at(record.heatingPower, 3.5)).toBeCloseTo(1000, 6);
    expect(at(record.heatingPower, 6.5)).toBeNaN();
    expect(at(record.heatingPower, 9.5)).toBeCloseTo(1000, 6);
  });

  test('read once a day is said to be of no use, not passed over', () => {
    const daily = encode(`Time,Meter (kWh)\n${stamp(start)},100\n${stamp(start + 86400)},130\n`);
    const of = house({ loggers, heat: [{ file: 'm.csv', kind: 'meter' }] });
    expect(codes(of, { ...files, 'm.csv': daily })).toContain('heat-not-usable');
  });

  test('of two sources adds up', () => {
    const of = house({
      loggers,
      heat: [
        { file: 'p.csv', kind: 'power' },
        { from: '2027-01-10T17:00', to: '2027-01-10T23:00', powerW: 500 },
      ],
    });
    const { record, at } = recordOf(of, { ...files, 'p.csv': log('Power (W)', 10, () => 300) });
    expect(at(record.heatingPower, 8)).toBeCloseTo(800, 9);
    expect(at(record.heatingPower, 2)).toBeCloseTo(300, 9);
  });

  test('from a meter that was reset is not known there, and the reset is told', () => {
    const meter = log('Meter (kWh)', 10, (hours) => (hours < 12 ? 500 + hours : hours - 12));
    const of = house({ loggers, heat: [{ file: 'm.csv', kind: 'meter' }] });
    expect(codes(of, { ...files, 'm.csv': meter })).toContain('meter-ran-backwards');
  });
});

test('a file that several loggers share is read once for each way of reading it and accounted for once', () => {
  const rows = Array.from({ length: 145 }, (_, i) => `${stamp(start + i * 600)},20,5`);
  const both = encode(['Time,Hall (°C),Shed (°C)', ...rows].join('\n'));
  const of = house({
    loggers: [
      { file: 'x.csv', place: 'inside', columns: { temperature: 'Hall (°C)' } },
      { file: 'x.csv', place: 'outside', columns: { temperature: 'Shed (°C)' } },
    ],
  });
  const { record, accounts, at } = recordOf(of, { 'x.csv': both });
  expect(at(record.insideTemperature, 6)).toBeCloseTo(20, 9);
  expect(at(record.outsideTemperature, 6)).toBeCloseTo(5, 9);
  expect(accounts.map(({ file }) => file)).toEqual(['x.csv']);
});

test('an inside logger with a single reading is left out with a warning, and the others go on', () => {
  const of = house({ loggers: [inside, { file: 'b.csv', place: 'inside' }, outside] });
  const single = encode(`Time,Temperature (°C)\n${stamp(start)},12.5\n`);
  const files = { 'a.csv': steady(20), 'b.csv': single, 'o.csv': steady(5) };
  const { record, at } = recordOf(of, files);
  expect(at(record.insideTemperature, 6)).toBeCloseTo(20, 9);
  expect(codes(of, files)).toContain('logger-too-short');
});

test('a column that house.json names and the file does not have is asked about aloud', () => {
  const of = house({ loggers: [{ ...inside, columns: { temperature: 'Temprature' } }, outside] });
  expect(codes(of, { 'a.csv': steady(20), 'o.csv': steady(5) })).toContain('column-not-found');
});

test('a constant inside temperature beside loggers that were inside is told not to be used', () => {
  const of = house({ loggers: [inside, outside], conditions: { insideC: 21 } });
  const files = { 'a.csv': steady(20), 'o.csv': steady(5) };
  expect(codes(of, files)).toContain('inside-logged');
  const { record, at } = recordOf(of, files);
  expect(at(record.insideTemperature, 6)).toBeCloseTo(20, 9);
});

describe('later exports of one logger', () => {
  const dayOf = (first: number, value: (i: number) => number) =>
    encode(
      [
        'Time,Temperature (°C)',
        ...Array.from({ length: 145 }, (_, i) => `${stamp(start + (first + i) * 600)},${value(first + i)}`),
      ].join('\n'),
    );
  const of = house({ loggers: [{ ...inside, continuedIn: ['a2.csv'] }, outside] });

  test('are one series, and what both hold counts once', () => {
    const { record, findings } = recordOf(of, {
      'a.csv': dayOf(0, (i) => 20 + (i % 7) / 10),
      'a2.csv': dayOf(72, (i) => 20 + (i % 7) / 10),
      'o.csv': dayOf(0, () => 5),
    });
    // half a day and a day: 36 hours of ten minutes, give or take the cells at both ends
    const known = record.insideTemperature.filter((it) => !Number.isNaN(it)).length;
    expect(Math.abs(known - 216)).toBeLessThanOrEqual(2);
    expect(findings.map(({ code }) => code)).not.toContain('exports-conflict');
  });

  test('that contradict each other here and there: the one named first is believed, and it is said', () => {
    const { at, record, findings } = recordOf(of, {
      'a.csv': dayOf(0, () => 20),
      'a2.csv': dayOf(72, (i) => (i < 92 ? 19 : 20)),
      'o.csv': dayOf(0, () => 5),
    });
    // readings 72 to 91 are both in a day of 145 that begins at 0 and in one that begins at 72
    expect(findings).toContainEqual(expect.objectContaining({ code: 'exports-conflict', count: 20 }));
    expect(at(record.insideTemperature, 13)).toBeCloseTo(20, 9);
  });

  test('of another logger are left out, and that is said', () => {
    const { record, findings } = recordOf(of, {
      'a.csv': dayOf(0, () => 20),
      'a2.csv': dayOf(72, () => 7),
      'o.csv': dayOf(0, () => 5),
    });
    const where = { file: 'a2.csv', column: 'Temperature (°C)' };
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'not-the-same-logger', common: 73, conflicts: 73, where }),
    );
    expect(record.insideTemperature.length).toBeLessThanOrEqual(145);
  });

  test('give a good reading where the first has a doubted one', () => {
    const { at, record } = recordOf(of, {
      'a.csv': dayOf(0, (i) => (i === 100 ? 60 : 20 + (i % 2) / 10)),
      'a2.csv': dayOf(72, (i) => 20 + (i % 2) / 10),
      'o.csv': dayOf(0, () => 5),
    });
    expect(at(record.insideTemperature, 100 / 6)).toBeLessThan(20.2);
  });
});

describe('spans of time in house.json', () => {
  const of = (extra: Partial<House['loggers'][number]>) =>
    house({ loggers: [{ ...inside, ...extra }, outside] });
  const files = { 'a.csv': steady(20), 'o.csv': steady(5) };

  test('of one date are that whole day', () => {
    const leaveOut = [{ from: '2027-01-11', to: '2027-01-11' }];
    const { record } = recordOf(of({ leaveOut }), files);
    // the day's log begins at noon of the 10th: only its first twelve hours are left
    expect(record.insideTemperature.length).toBeLessThanOrEqual(72);
  });

  test('that do nothing are said', () => {
    const idle = [{ from: '2029-01-01', to: '2029-01-02' }];
    expect(codes(of({ leaveOut: idle }), files)).toContain('span-without-effect');
    expect(codes(of({ putBack: idle }), files)).toContain('span-without-effect');
  });

  test('that end before they begin are refused at their key', () => {
    const text = JSON.stringify(of({ leaveOut: [{ from: '2027-01-12', to: '2027-01-11' }] }), null, 2);
    const read = readHouse(text);
    expect(read.kind === 'problems' && read.problems.map(({ where }) => where.key)).toEqual([
      'loggers[0].leaveOut[0].to',
    ]);
  });
});

describe('a doubted reading', () => {
  const spiky = log('Temperature (°C)', 10, (hours) =>
    Math.abs(hours - 6) < 0.01 ? 60 : 20 + (hours % 1) / 10,
  );
  const files = { 'a.csv': spiky, 'o.csv': steady(5) };

  test('is kept out', () => {
    const { at, record } = recordOf(house({ loggers: [inside, outside] }), files);
    expect(at(record.insideTemperature, 6)).toBeLessThan(21);
  });

  test('is used where the house puts it back, and that is said', () => {
    const putBack = [{ from: '2027-01-10T17:50', to: '2027-01-10T18:10', why: 'the oven' }];
    const { at, record, findings } = recordOf(house({ loggers: [{ ...inside, putBack }, outside] }), files);
    expect(at(record.insideTemperature, 6)).toBeGreaterThan(30);
    expect(findings).toContainEqual(expect.objectContaining({ code: 'readings-put-back', count: 1 }));
  });
});

describe('loggers side by side', () => {
  /** Eight hours together at 15 °C, then each in its place; b reads 0.4 K high throughout. */
  const placed = (off: number, celsius: number) =>
    log('Temperature (°C)', 10, (hours) => {
      const noise = Math.sin(997 * hours) / 50;
      return ((hours < 8 ? 15 : celsius) + off + noise).toFixed(2);
    });
  const of = house({
    loggers: [inside, { file: 'b.csv', place: 'inside' }, { file: 'c.csv', place: 'inside' }, outside],
    coLocation: { from: '2027-01-10T12:00', to: '2027-01-10T19:55' },
  });
  const files = {
    'a.csv': placed(0, 20),
    'b.csv': placed(0.4, 20),
    'c.csv': placed(0, 20),
    'o.csv': placed(0, 5),
  };

  test('tell what each is off, and that is taken off', () => {
    const { at, record, findings } = recordOf(of, files);
    // (20 + 20 + 20)/3 where it would be 20.13; the noise is at most 0.02 K
    expect(at(record.insideTemperature, 16)).toBeGreaterThan(19.95);
    expect(at(record.insideTemperature, 16)).toBeLessThan(20.05);
    expect(findings).toContainEqual(
      expect.objectContaining({
        code: 'co-location-offset',
        where: expect.objectContaining({ file: 'b.csv' }),
      }),
    );
  });

  test('make the difference surer, and their spell is no reading of the house', () => {
    const { coLocation: _, ...without } = of;
    const sure = recordOf(of, files).record;
    expect(sure.differenceSd).toBeLessThan(recordOf(without, files).record.differenceSd);
    expect(sure.grid.start).toBeGreaterThan(start + 7.5 * 3600);
  });
});

test('loggers ten kelvins apart cannot have lain side by side: nothing is taken off, and it is said', () => {
  const of = house({
    loggers: [inside, outside],
    coLocation: { from: '2027-01-10T14:00', to: '2027-01-10T20:00' },
  });
  const { at, record, findings } = recordOf(of, { 'a.csv': steady(20), 'o.csv': steady(5) });
  expect(findings).toContainEqual(expect.objectContaining({ code: 'co-location-apart' }));
  expect(at(record.outsideTemperature, 18)).toBeCloseTo(5, 9);
});

describe('the order of day and month', () => {
  const dated = (day: (hours: number) => string) =>
    encode(
      ['Time;Temperature °C', ...Array.from({ length: 12 }, (_, i) => `${day(i)};${20 - i / 10}`)].join('\n'),
    );
  const two = (n: number) => String(n).padStart(2, '0');

  test('that one file leaves open is told by the other files of the house', () => {
    const open = dated((i) => `04/05/2026 ${two(i)}:00`);
    const told = dated((i) => `04/${two(13 + i)}/2026 00:00`);
    const of = house({ loggers: [inside, outside] });
    const [a] = gatherRecord(of, new Map(Object.entries({ 'a.csv': open, 'o.csv': told }))).accounts;
    expect(a.reading).toMatchObject({
      understood: { clock: { order: 'month-first', orderBy: 'the other files' } },
    });
    expect(a.reading.findings.map(({ code }) => code)).not.toContain('date-order-unknown');
  });
});

describe('what only shows when all loggers are seen together', () => {
  test('one recording under two names is asked about', () => {
    const lively = log('Temperature (°C)', 10, (hours) =>
      (20 + Math.sin(hours) + Math.sin(7.3 * hours)).toFixed(2),
    );
    const of = house({ loggers: [inside, { file: 'b.csv', place: 'inside' }, outside] });
    expect(codes(of, { 'a.csv': lively, 'b.csv': lively, 'o.csv': steady(5) })).toContain('same-recording');
  });
});

test('where one file of a house can only be in °F, one that says no unit is read as °F too, and asked about', () => {
  const of = house({ loggers: [inside, outside] });
  const files = { 'a.csv': log('Temperature', 10, () => 68), 'o.csv': log('Temperature', 10, () => 41) };
  const { at, record, findings } = recordOf(of, files);
  // (68 − 32) · 5/9 = 20 and (41 − 32) · 5/9 = 5
  expect(at(record.insideTemperature, 6)).toBeCloseTo(20, 9);
  expect(at(record.outsideTemperature, 6)).toBeCloseTo(5, 9);
  expect(findings.map(({ code, where }) => [code, where.file])).toEqual(
    expect.arrayContaining([
      ['temperature-unit-guessed', 'a.csv'],
      ['unit-as-other-files', 'o.csv'],
    ]),
  );
});
