/** Walls to a heated neighbour: what is asked, and what a refused one leaves of the house. */
import { describe, expect, test } from 'vitest';
import { statedNeighbour } from '../../src/fabric/index.ts';
import { say } from '../../src/words/index.ts';
import { codesOf, invented, inventedDesign } from './inventedHouse.ts';

const steel = { name: 'steel stud', widthMm: 1.2, spacingMm: 600, conductivityWmK: 50 };
const wool = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.035, bridge: steel };
const party = { name: 'Party wall', areaM2: 30, to: 'adjacent', buildUp: { layers: [wool] } };
const walls = { name: 'Walls', areaM2: 100, uValue: 0.2 };

describe('a refused wall to a neighbour', () => {
  const design = inventedDesign({ elements: [walls, party] });
  test('leaves the house its heat loss, which does not count it', () => {
    // COMPUTED by hand: 100 · 0.2; PRACTICE: 5 % on a stated U-value, 1.96 of them either way
    expect(design.heatLoss).toBeCloseTo(20, 12);
    expect(design.ranges.fabric).toEqual({
      value: 20,
      low: expect.closeTo(18.04, 9),
      high: expect.closeTo(21.96, 9),
    });
    expect(design.refusals).toEqual([]);
  });
  test('has no U-value, and what flows through it is unknown, which is said', () => {
    expect(design.elements[1].transmittance).toBeNull();
    expect(design.toNeighbours).toBeNull();
    const finding = design.findings.find(({ code }) => code === 'flow-to-neighbour-unknown');
    expect(finding).toEqual({
      code: 'flow-to-neighbour-unknown',
      elements: ['Party wall'],
      where: { key: 'elements' },
    });
    expect(codesOf(design.elements[1].findings)).toContain('metal-bridges-insulation');
  });
});

describe('a neighbour without a logger', () => {
  const asked = (conditions: object) =>
    inventedDesign({ elements: [walls, { ...party, uValue: 0.5 }], conditions }).findings.filter(({ code }) =>
      code.startsWith('neighbour-'),
    );
  test('is asked for by the keys that answer it', () => {
    const [finding] = asked({});
    expect(finding.where.key).toBe('conditions.neighbour');
    expect(say(finding).remedy).toMatch(/"temperatureC" and "plusMinusK" under "conditions"\."neighbour"/);
  });
  test('with a temperature only takes 4 K either way, and is asked for the range', () => {
    expect(asked({ neighbour: { temperatureC: 20 } })).toEqual([
      {
        code: 'neighbour-range-assumed',
        plusMinus: 4,
        where: { key: 'conditions.neighbour.plusMinusK' },
      },
    ]);
  });
  test('with a temperature and its range is asked nothing', () => {
    expect(asked({ neighbour: { temperatureC: 20, plusMinusK: 2 } })).toEqual([]);
  });
});

test('a stated neighbour is known by its temperature and range; one not stated is unknown', () => {
  const stated = (conditions: object) => statedNeighbour(invented({ conditions }));
  expect(stated({ neighbour: { temperatureC: 19, plusMinusK: 1.5 } })).toEqual({
    temperature: 19,
    plusMinus: 1.5,
  });
  // PRACTICE: 4 K where nobody says
  expect(stated({ neighbour: { temperatureC: 19 } })).toEqual({ temperature: 19, plusMinus: 4 });
  expect(stated({})).toBeNull();
});
