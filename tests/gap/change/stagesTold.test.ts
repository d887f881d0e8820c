/** Stages as people write them down, the wrong ways as well: what is told of a comparison, to the JSON. */
import { describe, expect, test } from 'vitest';
import type { House } from '../../../src/house.ts';
import {
  changeOfYearSentence,
  smallestChangeSentence,
  yearSentence,
} from '../../../src/words/whatChanged.ts';
import { HOUR, midnight, recordOf } from '../../cooling/nightsAtHand.ts';
import { codesOf, invented } from '../../fabric/inventedHouse.ts';
import { told } from '../../proving/judging/told.ts';

/** 40 h until the evening of 16 January, 50 h from then on; nights scatter by what it is outside. */
const change = midnight + 6.5 * 24 * HOUR;
const wavy = (t: number) => 5 + 3 * Math.sin(t / (5.3 * 24 * HOUR)) + Math.sin(t / (9 * HOUR));
const slow = recordOf({ days: 13, timeConstant: 50 * HOUR, outside: wavy });
const quick = recordOf({ days: 13, timeConstant: 40 * HOUR, outside: wavy });
const record = {
  ...slow,
  insideTemperature: slow.insideTemperature.map((it, i) =>
    slow.grid.start + i * slow.grid.step < change ? quick.insideTemperature[i] : it,
  ),
};

const parts = {
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  floorAreaM2: 80,
  volumeM3: 200,
  elements: [
    { name: 'Walls', areaM2: 120, uValue: 0.5 },
    { name: 'Roof', areaM2: 60, uValue: 0.3 },
  ],
  heatCapacity: { kJPerM2K: 120 },
};
const before = { name: 'Before', from: '2027-01-10', to: '2027-01-16' };
const after = { name: 'After', from: '2027-01-17', to: '2027-01-23' };
const withStages = (stages: object[], more: object = {}): House => invented({ ...parts, stages, ...more });
const toldOf = (stages: object[], more: object = {}) => told(withStages(stages, more), record);

describe('two stages, the second of which loses less', () => {
  const { comparisons, stages } = toldOf([before, after]);
  const [it] = comparisons;

  test('have a difference below 0 in W/K, in air changes and in kWh a year where the ratio is below 1', () => {
    expect(it.heatLossRatio?.value).toBeLessThan(1);
    for (const key of ['heatLossDifferenceWK', 'airChangesPerHour', 'energyKWhPerYear'] as const)
      expect(it[key]?.value).toBeLessThan(0);
  });

  test('the kWh are the W/K times 2463 K·day', () => {
    // COMPUTED: 24 h, 2463 READ second-hand
    for (const key of ['value', 'low', 'high'] as const)
      expect((it.energyKWhPerYear?.[key] ?? 0) / (it.heatLossDifferenceWK?.[key] ?? 1)).toBeCloseTo(
        0.024 * 2463,
        6,
      );
    expect(it.degreeDays).toEqual({ baseC: 15.5, kelvinDays: 2463, place: 'United Kingdom' });
  });

  test('the air changes are W/K over 0.33 times the volume', () => {
    expect((it.airChangesPerHour?.value ?? 0) / (it.heatLossDifferenceWK?.value ?? 1)).toBeCloseTo(1 / 66, 9);
  });

  test('stand with their weather, the smallest change and the nights that would show others', () => {
    expect(it.weather?.before).toMatchObject({ nights: 6, windMS: null, irradianceWM2: null });
    expect(it.smallestChangePercent).toBeGreaterThan(0);
    expect(it.nightsToShow?.map(({ changePercent }) => changePercent)).toEqual([5, 10, 20]);
    expect(codesOf(it.notes)).toEqual([
      'same-mass-assumed',
      'air-changes-if-leakage',
      'change-over-standard-year',
      'smallest-change',
      'nights-to-show',
    ]);
  });

  test('are told to a homeowner in kWh, as a difference that these nights could show, and as a year', () => {
    expect(changeOfYearSentence(it)).toMatch(/^Over a standard year that is .* kWh/);
    expect(smallestChangeSentence(it)).toMatch(/^Nights like these show a fall of \d+ % or more/);
    expect(yearSentence(stages[1])).toMatch(
      /^It needs \d+ to \d+ kWh of heat in a usual year .* on a day of −3 °C: for orientation only\.$/,
    );
  });
});

test('stages that overlap are compared by the nights that only one of them has, and that is said', () => {
  const { comparisons, warnings } = toldOf([before, { ...after, from: '2027-01-14' }]);
  const [{ notes, weather, heatLossRatio }] = comparisons;
  expect(codesOf(warnings)).toContain('stages-overlap');
  expect(notes.find(({ code }) => code === 'shared-nights-left-out')?.text).toContain(
    '14 January and 15 January',
  );
  expect(weather?.before.nights).toBe(4);
  expect(heatLossRatio).not.toBeNull();
});

test('of two stages with the same nights nothing is compared', () => {
  const [{ heatLossRatio, notes, heatLossDifferenceWK }] = toldOf([
    before,
    { ...before, name: 'Again' },
  ]).comparisons;
  expect(heatLossRatio).toBeNull();
  expect(heatLossDifferenceWK).toBeNull();
  expect(codesOf(notes)).toContain('side-without-nights');
});

test.each([
  ['outside of the record', { ...after, from: '2027-03-01', to: '2027-03-09' }, 0],
  ['of one morning', { ...after, from: '2027-01-17T09:00', to: '2027-01-17T12:00' }, 0],
])('a stage %s is compared with nothing, and named', (_, odd, nights) => {
  const [it] = toldOf([before, odd]).comparisons;
  expect(it.heatLossRatio).toBeNull();
  expect(it.weather?.after.nights).toBe(nights);
  expect(it.smallestChangePercent).toBeNull();
  expect(it.notes.find(({ code }) => code === 'side-without-nights')?.text).toBe(
    '“After” has fewer than two nights that count, so there is no ratio.',
  );
});

test('a stage of one night gives no plan of nights, since one night has no scatter', () => {
  const [it] = toldOf([before, { ...after, to: '2027-01-18' }]).comparisons;
  expect(it.weather?.after.nights).toBe(1);
  expect(it.nightsToShow ?? null).toBeNull();
});

test('a stage without another says so, and how many nights would show a change', () => {
  const { comparisons, stages } = toldOf([before]);
  expect(comparisons).toEqual([]);
  const note = stages[0].notes.find(({ code }) => code === 'only-one-stage');
  expect(note?.text).toMatch(/nothing is compared yet\. As its nights scatter, .* a fall of 20 %/);
  expect(stages[0].nightsToShow?.[0].changePercent).toBe(5);
});

test('where no stages are named the one whole record is not scolded for it', () => {
  const { stages } = told(invented(parts), record);
  expect(codesOf(stages[0].notes)).not.toContain('only-one-stage');
});

test('elements that came between the stages are said, and the change is not told as leakage', () => {
  const [it] = toldOf([{ ...before, missing: ['Roof'] }, after]).comparisons;
  expect(codesOf(it.notes)).toContain('mass-may-differ');
  expect(it.airChangesPerHour).toBeNull();
  expect(it.notes.find(({ code }) => code === 'not-leakage-alone')?.text).toContain('“Roof” came or went');
});

test('where they overlap besides, so that no network fits both, the change stays a ratio', () => {
  const [it] = toldOf([
    { ...before, missing: ['Roof'] },
    { ...after, from: '2027-01-15' },
  ]).comparisons;
  expect(it.heatLossRatio).not.toBeNull();
  expect(it.heatLossDifferenceWK).toBeNull();
  expect(codesOf(it.notes)).toEqual(
    expect.arrayContaining(['mass-may-differ', 'no-difference-for-mass', 'smallest-change']),
  );
});

test('where no degree days are known nothing is told of a year, and why', () => {
  const abroad = { location: { latitude: 52, longitude: 5, timeZone: 'Europe/Amsterdam' } };
  const { comparisons, stages, design } = toldOf([before, after], abroad);
  expect(comparisons[0]).toMatchObject({ energyKWhPerYear: null, degreeDays: null });
  expect(codesOf(comparisons[0].notes)).toContain('no-degree-days');
  expect(stages[0].annual).toBeNull();
  expect(design).toMatchObject({ heatDemandKWhPerYear: null, heatLoadW: null, annual: null });
  expect(codesOf(design?.notes ?? [])).toContain('no-standard-year');
});

test('without the volume nothing is told of air changes, and why', () => {
  const [it] = toldOf([before, after], { volumeM3: undefined }).comparisons;
  expect(it.airChangesPerHour).toBeNull();
  expect(codesOf(it.notes)).toContain('no-volume');
});
