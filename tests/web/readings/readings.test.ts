/** What the page of the readings marks, reads on by key, and gives to take along. */
import { describe, expect, test } from 'vitest';
import type { ReadingsAnswer, ThinnedChannel } from '../../../server/api/shapes.ts';
import { doubtedMarks, heatedSpans } from '../../../web/charts/readingsFacts.ts';
import { askedBy, nearestIndex } from '../../../web/charts/readingsKeys.ts';
import { familiesOf } from '../../../web/charts/readingsSeries.ts';
import { readingsSvg } from '../../../web/charts/readingsSvg.ts';
import { shownRows } from '../../../web/charts/takeReadings.ts';
import { csvOf } from '../../../web/readings/csv.ts';

const HOUR = 3600;
const start = Date.UTC(2027, 6, 1) / 1000; // summer: London is an hour ahead
const channel = (over: Partial<ThinnedChannel>): ThinnedChannel => ({
  file: 'in.csv',
  column: 'T',
  room: 'Hall',
  place: 'inside',
  quantity: 'temperature',
  unit: 'C',
  min: [20, 19.5, 19, null],
  max: [20.5, 20, 19, null],
  ...over,
});
const answer = (channels: readonly ThinnedChannel[], over: Partial<ReadingsAnswer> = {}): ReadingsAnswer => ({
  first: start,
  last: start + 4 * HOUR,
  time: [0, 1, 2, 3].map((i) => start + (i + 0.5) * HOUR),
  step: HOUR,
  channels,
  nights: [],
  stages: [],
  notes: [],
  heating: [],
  leftOut: [],
  ...over,
});
const shownOf = (readings: ReadingsAnswer) => ({
  readings,
  families: familiesOf(readings.channels),
  view: { from: readings.first, to: readings.last },
  timeZone: 'Europe/London',
});

describe('a reading that is kept out', () => {
  test('stands where it was read: at the end of its interval that is off its neighbours', () => {
    const spiky = channel({
      min: [20, -40, 20, 20],
      max: [20.2, 20, 20.1, 20],
      doubted: { at: [start + 1.2 * HOUR], more: false },
    });
    expect(doubtedMarks(spiky, answer([spiky]))).toEqual([{ at: start + 1.5 * HOUR, value: -40 }]);
  });

  test('stands at its very instant where it is alone in its interval', () => {
    const one = channel({
      min: [20, 99, 20, 20],
      max: [20, 99, 20, 20],
      doubted: { at: [start + 1.2 * HOUR], more: false },
    });
    expect(doubtedMarks(one, answer([one]))).toEqual([{ at: start + 1.2 * HOUR, value: 99 }]);
  });
});

test('the heat was on where it was metered well above nothing, and where house.json says so', () => {
  const heater = channel({
    place: 'heat',
    quantity: 'power',
    min: [0, 0, 2000, 0],
    max: [3, 2000, 2000, 12],
  });
  const stated = { from: start + 3 * HOUR, to: start + 4 * HOUR };
  expect(heatedSpans(answer([heater], { heating: [stated] }))).toEqual([
    { from: start + HOUR, to: start + 3 * HOUR },
    stated,
  ]);
});

test.each([
  ['the energy of each interval', 'energy', [0, 1.5, 2, 0]],
  ['the count of a meter', 'meter', [310, 311.5, 313.5, 313.5]],
] as const)('the heat was on where %s says so', (_, quantity, max) => {
  const heater = channel({ place: 'heat', quantity, min: max, max });
  expect(heatedSpans(answer([heater]))).toEqual([{ from: start + HOUR, to: start + 3 * HOUR }]);
});

describe('keys', () => {
  const whole = { from: 0, to: 10 * 86_400 };
  const view = { from: 86_400, to: 2 * 86_400 };
  const press = (key: string, shiftKey = false) =>
    askedBy({ key, shiftKey }, { view, whole, step: 600, about: 100_000 });

  test('the arrows read on by one interval, with Shift they move the view, pages are days', () => {
    expect(press('ArrowRight')).toEqual({ kind: 'cursor', by: 1 });
    expect(press('PageUp')).toEqual({ kind: 'cursor', by: -144 });
    expect(press('ArrowLeft', true)).toEqual({
      kind: 'view',
      view: { from: 0.75 * 86_400, to: 1.75 * 86_400 },
    });
  });

  test('closer goes to where the cursor stands, and nothing else is taken from the browser', () => {
    const closer = press('+');
    expect(closer?.kind === 'view' && closer.view.to - closer.view.from).toBe(43_200);
    expect(closer?.kind === 'view' && (100_000 - closer.view.from) / 43_200).toBeCloseTo(13_600 / 86_400, 9);
    expect(press('0')).toEqual({ kind: 'view', view: whole });
    expect(press('Tab')).toBeNull();
  });

  test('the nearest interval is one of those there are', () => {
    expect([-1000, 49, 51, 10_000].map((it) => nearestIndex([0, 100, 200], 100, it))).toEqual([0, 0, 1, 2]);
  });
});

describe('what is taken along', () => {
  test('as CSV: local times with their offset, the least and the greatest with their unit, a gap left empty', () => {
    const lines = csvOf(shownRows(shownOf(answer([channel({})])))).split('\r\n');
    expect(lines[0]).toBe('Time,"Hall: Temperature (°C), least","Hall: Temperature (°C), greatest"');
    expect(lines[1]).toBe('2027-07-01T01:30:00+01:00,20,20.5');
    expect(lines[4]).toBe('2027-07-01T04:30:00+01:00,,');
    expect(lines).toHaveLength(6);
  });

  test('a room named like a formula is no formula, and frost stays a figure', () => {
    const csv = csvOf(
      shownRows(shownOf(answer([channel({ room: '=HYPERLINK("x")', min: [-3, -3, -3, -3] })]))),
    );
    expect(csv).toContain(`"'=HYPERLINK(""x""): Temperature`);
    expect(csv).toMatch(/,-3,20\.5/);
  });

  test('only what lies within the view', () => {
    const shown = shownOf(answer([channel({})]));
    const rows = shownRows({ ...shown, view: { from: start + HOUR, to: start + 2 * HOUR } });
    expect(rows).toHaveLength(2);
  });

  test('as SVG: a reading that is kept out is hollow, and a note is there with its words', () => {
    const readings = answer([channel({ doubted: { at: [start + 1.2 * HOUR], more: false } })], {
      notes: [{ at: start + HOUR, local: '2027-07-01T02:00', text: 'Hatch <open>' }],
    });
    const svg = readingsSvg(shownOf(readings), 'House');
    expect(svg.match(/<circle [^>]*r="3.5" fill="#ffffff"/g)).toHaveLength(1);
    expect(svg).toContain('<title>Hatch &#60;open&#62;</title>');
    expect(svg).toMatch(/<circle [^>]*r="8" [^>]*\/><text [^>]*>1<\/text>/);
  });

  test('as SVG: names are never markup, and a gap parts the line', () => {
    const readings = answer([
      channel({ room: '<script>', min: [20, null, 19, 19], max: [21, null, 20, 20] }),
    ]);
    const svg = readingsSvg(shownOf(readings), 'House & "garden"');
    expect(svg).not.toContain('<script>');
    expect(svg).toContain('&#60;script&#62;');
    expect(svg.match(/fill="none" stroke="#7d2a0a" stroke-width="1.25"/g)).toHaveLength(2);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});
