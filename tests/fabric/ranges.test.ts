import { describe, expect, test } from 'vitest';
import { designHeatLoad, neighbourFlow } from '../../src/fabric/heatLoad.ts';
import { inventedDesign } from './inventedHouse.ts';
import { known } from './walls.ts';

const wool = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.04 };
const studs = { name: 'stud', fraction: 0.15, conductivityWmK: 0.13 };
const halfWidth = (it: { low: number; high: number } | null) =>
  it === null ? Number.NaN : (it.high - it.low) / 2;

describe('the design of a house known by its transmittances', () => {
  // PRACTICE: 5 % on a stated transmittance, 0.1 on an assumed 0.9 of a void, 20 % on stated bridges, 30 % on air.
  // COMPUTED by hand: √((0.05·20)² + (0.05·7.2)² + (10·0.8·0.1)²)·1.96 = √(1 + 0.1296 + 0.64)·1.96 = 2.607316;
  //   bridges 0.2·6.5·1.96 = 2.548; air 0.3·39.6 = 11.88; in squares 12.42678
  const { ranges, heatLoss } = inventedDesign({
    volumeM3: 240,
    elements: [
      { name: 'Walls', areaM2: 100, uValue: 0.2 },
      { name: 'To the loft', areaM2: 10, uValue: 0.8, to: 'void' },
      { name: 'To next door', areaM2: 30, uValue: 2, to: 'adjacent' },
    ],
    thermalBridges: { psiLengthWK: 6.5 },
    ventilation: { airChangesPerHour: 0.5 },
  });
  test('is known within the doubts of its parts, in squares, the neighbour left out', () => {
    expect(ranges.fabric?.value).toBeCloseTo(27.2, 9);
    expect(halfWidth(ranges.fabric)).toBeCloseTo(2.607316, 6);
    expect(halfWidth(ranges.bridges)).toBeCloseTo(2.548, 9);
    expect(halfWidth(ranges.heatLoss)).toBeCloseTo(12.42678, 5);
    expect(ranges.heatLoss?.value).toBeCloseTo(known(heatLoss), 12);
  });
  test('tells each element in its own range', () => {
    expect(ranges.elements.map((it) => halfWidth(it).toFixed(3))).toEqual(['1.960', '1.719', '0.000']);
  });
});

describe('the design of an element by its layers', () => {
  const rangeOf = (layers: object[], parts: object = {}) => {
    const { ranges } = inventedDesign({
      elements: [{ name: 'W', areaM2: 100, buildUp: { layers }, ...parts }],
    });
    return ranges.elements[0];
  };
  test('without timber is as sure as its conductivities', () => {
    // COMPUTED by hand: R 2.67 drawn; conductivity 7 % higher: 0.17 + 2.5/1.07 = 2.506449; U 0.374532 and 0.398971
    expect(halfWidth(rangeOf([wool]))).toBeCloseTo(100 * 1.96 * (0.398971 - 0.374532), 3);
  });
  test('by a stated resistance is as sure as by the conductivity it comes from', () => {
    const stated = rangeOf([{ name: 'wool', resistanceM2KW: 2.5 }]);
    expect(halfWidth(stated)).toBeCloseTo(halfWidth(rangeOf([wool])), 9);
  });
  test('with timber has the doubt of the method as well: its largest error over √3', () => {
    const layers = [{ ...wool, bridge: studs }];
    const [element] = inventedDesign({ elements: [{ name: 'W', areaM2: 1, buildUp: { layers } }] }).elements;
    // COMPUTED by hand: R′ = 1/(0.85/2.67 + 0.15/0.939231) = 2.091800, R″ = 0.17 + 1/(0.34 + 0.195) = 2.039159;
    // RT 2.065479, U 0.484149; (R′ - R″)/(2·RT)/√3·U = 0.012743/1.732051·0.484149
    expect(element.spread?.other).toBeCloseTo(0.003562, 6);
  });
  test('with timber is less sure', () => {
    const bare = rangeOf([wool]);
    const framed = rangeOf([{ ...wool, bridge: studs }]);
    expect(halfWidth(framed) / known(framed?.value ?? null)).toBeGreaterThan(
      halfWidth(bare) / known(bare?.value ?? null),
    );
  });
  test('on the ground is surer when the ground is stated', () => {
    const on = { to: 'ground', perimeterM: 40 };
    const assumed = rangeOf([wool], on);
    const stated = rangeOf([wool], { ...on, soil: 'clay', wallThicknessMm: 300 });
    expect(assumed?.value).toBe(stated?.value);
    expect(halfWidth(assumed)).toBeGreaterThan(halfWidth(stated));
  });
});

test('leakage by a rule of thumb makes the whole range reach further up than down', () => {
  const design = inventedDesign({
    volumeM3: 240,
    elements: [{ name: 'Walls', areaM2: 100, uValue: 0.2 }],
    thermalBridges: { psiLengthWK: 0 },
    ventilation: { airPermeability50: 6 },
  });
  // COMPUTED by hand: 20 W/K ± 1.96; 0.33·600/20 = 9.9, from 6.6 to 19.8: 29.9 - √(1.96² + 3.3²), + √(1.96² + 9.9²)
  expect(design.ranges.heatLoss).toEqual({
    value: expect.closeTo(29.9, 9),
    low: expect.closeTo(26.061823, 6),
    high: expect.closeTo(39.992155, 6),
  });
  // On a day 10 K warmer outside the same range lies the other way about.
  expect(designHeatLoad(design, { insideTemperature: 20, outsideTemperature: 30 })).toEqual({
    value: expect.closeTo(-299, 9),
    low: expect.closeTo(-399.92155, 4),
    high: expect.closeTo(-260.61823, 4),
  });
});

test('two alike walls are off together: their range is that of one wall of both areas', () => {
  const wall = (name: string, areaM2: number) => ({ name, areaM2, buildUp: { layers: [wool] } });
  const two = inventedDesign({ elements: [wall('North', 50), wall('South', 50)] }).ranges.fabric;
  const one = inventedDesign({ elements: [wall('Both', 100)] }).ranges.fabric;
  expect(halfWidth(two)).toBeCloseTo(halfWidth(one), 9);
});

describe('the heat load on a cold day', () => {
  const parts = {
    volumeM3: 240,
    elements: [
      { name: 'Walls', areaM2: 100, uValue: 0.2 },
      { name: 'Party wall', areaM2: 30, uValue: 0.5, to: 'adjacent' },
    ],
    thermalBridges: { psiLengthWK: 5 },
    ventilation: { airChangesPerHour: 0.5 },
  };
  const design = inventedDesign(parts);
  const cold = { insideTemperature: 21, outsideTemperature: -3 };
  test('is the heat loss times the difference, in its range', () => {
    // COMPUTED by hand: 20 + 5 + 39.6 = 64.6 W/K over 24 K
    const load = designHeatLoad(design, cold);
    expect(load?.value).toBeCloseTo(1550.4, 6);
    expect(load?.high).toBeCloseTo(24 * (design.ranges.heatLoss?.high ?? 0), 6);
  });
  test('counts a cooler neighbour, and is wider for not knowing how cool', () => {
    const neighbour = { temperature: 15, plusMinus: 3 };
    // COMPUTED by hand: 15 W/K over 6 K, ±3 K
    expect(neighbourFlow(design, { ...cold, neighbour })).toEqual({ value: 90, low: 45, high: 135 });
    const load = designHeatLoad(design, { ...cold, neighbour });
    expect(load?.value).toBeCloseTo(1640.4, 6);
    const without = designHeatLoad(design, cold);
    // Independent of each other: in squares, 45 W of the neighbour on either side.
    expect(known(load?.high ?? null) - 1640.4).toBeCloseTo(
      Math.hypot(45, known(without?.high ?? null) - 1550.4),
      6,
    );
    expect(1640.4 - known(load?.low ?? null)).toBeCloseTo(
      Math.hypot(45, 1550.4 - known(without?.low ?? null)),
      6,
    );
  });
  test('keeps low below high when it is warmer outside', () => {
    const load = designHeatLoad(design, { insideTemperature: 20, outsideTemperature: 30 });
    expect(load?.value).toBeCloseTo(-646, 6);
    expect(known(load?.low ?? null)).toBeLessThan(known(load?.high ?? null));
  });
});

describe('a neighbour', () => {
  const elements = [{ name: 'Party wall', areaM2: 30, uValue: 0.5, to: 'adjacent' }];
  const asked = (parts: object) =>
    inventedDesign({ elements, ...parts }).findings.filter(({ code }) => code === 'neighbour-unknown');
  const logger = { file: 'next.csv', place: 'adjacent', room: 'Next door' };
  const inside = { file: 'inside.csv', place: 'inside' };
  test('without a logger and a stated temperature is asked for', () => {
    expect(asked({})).toEqual([
      { code: 'neighbour-unknown', elements: ['Party wall'], where: { key: 'conditions.neighbour' } },
    ]);
  });
  test('with either is not', () => {
    expect(asked({ loggers: [inside, logger] })).toEqual([]);
    expect(asked({ loggers: [inside, { ...logger, element: 'Party wall' }] })).toEqual([]);
    expect(asked({ conditions: { neighbour: { temperatureC: 19, plusMinusK: 2 } } })).toEqual([]);
  });
  test('gets what would flow to it told apart from the heat loss', () => {
    expect(inventedDesign({ elements }).toNeighbours).toBe(15);
  });
});
