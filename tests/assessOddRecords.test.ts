/** Records that fall short or mislead, of simulated houses whose truth is known: what is said of them, and what is not. */
import { describe, expect, test } from 'vitest';
import { readHouseFolder } from '../server/houseFolder.ts';
import { assess } from '../src/assess.ts';
import type { Estimate } from '../src/assessment.ts';
import { reportOf } from '../src/report.ts';
import { timeAt } from '../src/series/grid.ts';
import type { HouseRecord } from '../src/series/record.ts';
import { codesOf } from './fabric/inventedHouse.ts';
import { cutRecord, lastOf, proved, told } from './proving/judging/told.ts';

const cabin = proved('timber cabin', 'loggers, layers known');
const plain = told(cabin.house, cabin.record);
const { grid, insideTemperature, outsideTemperature } = cabin.record;

const holds = (it: Estimate | null, truth: number) => it !== null && it.low <= truth && truth <= it.high;
const widthOf = (it: Estimate | null) => (it === null ? Number.NaN : Math.log(it.high / it.low));

describe('outdoor readings that end half-way', () => {
  const half = grid.length >> 1;
  const record: HouseRecord = {
    ...cabin.record,
    outsideTemperature: outsideTemperature.slice().fill(Number.NaN, half),
  };
  const stage = lastOf(told(cabin.house, record));

  test('leave the nights after that out, and say that outdoor readings are missing', () => {
    const end = new Date(timeAt(grid, half) * 1000).toISOString().slice(0, 10);
    const after = stage.nights.filter(({ date }) => date > end);
    expect(after.length).toBeGreaterThan(3);
    for (const { used, reasons } of after) {
      expect(used).toBe(false);
      expect(
        codesOf(reasons).some((code) => code.endsWith('outside-readings') || code === 'gap-outside'),
      ).toBe(true);
    }
  });

  test('leave a heat loss from the nights before that holds the truth', () => {
    expect(holds(stage.heatLossWK, cabin.truth.stages[0].heatLossCoefficient)).toBe(true);
  });
});

test('in summer, with it 1 K cooler outside all night, no heat loss is given and colder nights are asked for', () => {
  const summer = { ...cabin.record, outsideTemperature: insideTemperature.map((it) => it - 1) };
  const stage = lastOf(told(cabin.house, summer));
  expect([stage.tier, stage.heatLossWK, stage.gap, stage.estimates]).toEqual(['none', null, null, []]);
  expect(codesOf(stage.next)).toEqual(['next-wait-for-cold']);
});

describe('two nights', () => {
  const stage = lastOf(told(cabin.house, cutRecord(cabin.record, 0, 2 * 144)));

  test('leave the verdict open, and more nights are asked for before a heated one', () => {
    expect(stage.nights.filter(({ used }) => used)).toHaveLength(2);
    expect(stage.gap?.verdict).toBe('undecided');
    const [first, then] = codesOf(stage.next);
    expect(first).toBe('next-more-nights');
    expect(['next-best-test', 'next-stays-open']).toContain(then);
  });
});

test('a heater’s log that never switches claims no heated night, and moves nothing', () => {
  const never = told(cabin.house, { ...cabin.record, heatingPower: new Float64Array(grid.length) });
  const stage = lastOf(never);
  expect(stage.nights.filter(({ heated }) => heated)).toEqual([]);
  expect(stage.tier).toBe('loggers');
  expect(stage.heatLossWK).toEqual(lastOf(plain).heatLossWK);
});

test('a meter that runs backwards is told of, and no watts are taken from it', async () => {
  const reading = await readHouseFolder(new URL('../sample-logs', import.meta.url).pathname);
  if (reading.kind !== 'house') throw new Error('no house');
  const hours = Array.from({ length: 240 }, (_, hour) => new Date(Date.UTC(2027, 1, 1, hour)).toISOString());
  const rows = hours.map((time, hour) => `${time},${(5000 - 1.5 * hour).toFixed(2)}`);
  const files = new Map(reading.files).set(
    'heater.csv',
    new TextEncoder().encode(['Time,Meter (kWh)', ...rows].join('\n')),
  );
  const assessing = assess({ ...reading.house, heat: [{ file: 'heater.csv', kind: 'meter' }] }, files);
  if (assessing.kind !== 'assessed') throw new Error('not assessed');
  const { stages, warnings } = reportOf(assessing.evidence);
  expect(codesOf(warnings)).toContain('meter-ran-backwards');
  expect(stages.map(({ tier }) => tier)).toEqual(['loggers', 'loggers']);
});

describe('a house of bare stone, without insulation', () => {
  const stone = proved('bare stone walls', 'loggers, layers known');
  test('has a heat loss whose interval holds the truth', () => {
    const [{ heatLossCoefficient }] = stone.truth.stages;
    expect(holds(lastOf(told(stone.house, stone.record)).heatLossWK, heatLossCoefficient)).toBe(true);
  });
});

test('without layers the interval is wider than with them', () => {
  const { house, record } = proved('timber cabin', 'loggers, U-values and a capacity figure');
  const [bare, layered] = [told(house, record), plain].map((it) => widthOf(lastOf(it).heatLossWK));
  expect(bare).toBeGreaterThan(layered);
});

test('without a design there are hours but no watts, and the design is asked for', () => {
  const { elements: _elements, partitions: _partitions, ...house } = cabin.house;
  const assessment = told(house, cabin.record);
  const stage = lastOf(assessment);
  expect([assessment.design, stage.heatLossWK, stage.gap]).toEqual([null, null, null]);
  expect(stage.timeConstantH).toEqual(lastOf(plain).timeConstantH);
  expect(codesOf(stage.next)).toEqual(['next-give-design']);
});

test('with inside and outside swapped there is no verdict of a house that meets its design, nor of one that does not', () => {
  const swapped = {
    ...cabin.record,
    insideTemperature: outsideTemperature,
    outsideTemperature: insideTemperature,
  };
  expect(['meets', 'exceeds']).not.toContain(lastOf(told(cabin.house, swapped)).gap?.verdict);
});

test('while a hatch stands open to the neighbour no heat loss is given, and it is said why', () => {
  const { house, record } = proved('extension, neighbour logged', 'loggers, layers known');
  const stage = lastOf(
    told({ ...house, conditions: { ...house.conditions, openToNeighbour: true } }, record),
  );
  expect([stage.estimates, stage.heatLossWK, stage.gap]).toEqual([[], null, null]);
  expect(codesOf(stage.notes)).toContain('open-to-neighbour');
});

test('while plaster dries the interval is wider, and it is said why', () => {
  const wet = { ...cabin.house, conditions: { ...cabin.house.conditions, wetTradesWithinWeeks: 1 } };
  const stage = lastOf(told(wet, cabin.record));
  expect(widthOf(stage.heatLossWK)).toBeGreaterThan(widthOf(lastOf(plain).heatLossWK));
  expect(codesOf(stage.estimates[0].notes)).toContain('still-drying');
});

test('air that holds far more water inside than outdoors is told of, asked about, and widens', () => {
  const rooms = cabin.record.rooms.map((room) => ({
    ...room,
    relativeHumidity: room.temperature.map(() => (room.place === 'outside' ? 0.8 : 0.9)),
  }));
  const stage = lastOf(told(cabin.house, { ...cabin.record, rooms }));
  expect(widthOf(stage.heatLossWK)).toBeGreaterThan(widthOf(lastOf(plain).heatLossWK));
  const note = stage.estimates[0].notes.find(({ code }) => code === 'vapour-excess');
  expect(note?.remedy).toContain('wetTradesWithinWeeks');
});

test('a heated neighbour whom nobody logged or told of is asked about, and the interval is wider than with a logger there', () => {
  const { house, record } = proved('extension, neighbour logged', 'loggers, layers known');
  const elsewhere = <T extends { readonly place: string }>(it: readonly T[]) =>
    it.filter(({ place }) => place !== 'adjacent');
  const unlogged = told(
    { ...house, loggers: elsewhere(house.loggers) },
    { ...record, rooms: elsewhere(record.rooms) },
  );
  expect(codesOf(unlogged.design?.notes ?? [])).toContain('neighbour-unknown');
  const logged = lastOf(told(house, record));
  expect(widthOf(lastOf(unlogged).heatLossWK)).toBeGreaterThan(widthOf(logged.heatLossWK));
});

test('a plug of 60 W, metered day and night, moves nothing and is told of', () => {
  const heatingPower = insideTemperature.map(() => 60);
  const plugged = told(cabin.house, { ...cabin.record, heatingPower });
  expect(lastOf(plugged).heatLossWK).toEqual(lastOf(plain).heatLossWK);
  expect(codesOf(plugged.warnings)).toContain('meter-not-of-heating');
});

test('days that are warmer outside than in are no metered days, though the heater log says 0 W', () => {
  const heatingPower = insideTemperature.map(() => 0);
  const outside = outsideTemperature.map((it, k) => (k < 5 * 144 ? insideTemperature[k] + 1 : it));
  const stage = lastOf(told(cabin.house, { ...cabin.record, heatingPower, outsideTemperature: outside }));
  expect(stage.tier).toBe('loggers');
});

describe('metered days whose sun was logged by halves', () => {
  const metered = proved('timber cabin', 'metered days, irradiance');
  const stageOf = (irradiance: Float64Array | null) =>
    lastOf(told(metered.house, { ...metered.record, irradiance }));

  test('are read as if nobody had logged it, never as days without sun', () => {
    const { irradiance } = metered.record;
    if (irradiance === null) throw new Error('no irradiance');
    const half = irradiance.slice().fill(Number.NaN, 0, irradiance.length >> 1);
    expect(stageOf(half).heatLossWK?.method).toBe('network');
    const network = (it: ReturnType<typeof stageOf>) =>
      it.estimates.find(({ method }) => method === 'network')?.heatLossWK;
    expect(network(stageOf(half))).toEqual(network(stageOf(null)));
  });
});

test('a neighbour stated to the last tenth of a kelvin still leaves a figure by the network', () => {
  const extension = proved('extension, neighbour not logged', 'loggers, layers known');
  const conditions = { ...extension.house.conditions, neighbour: { temperatureC: 19, plusMinusK: 0 } };
  const stage = lastOf(told({ ...extension.house, conditions }, extension.record));
  expect(stage.heatLossWK?.method).toBe('combined');
});
