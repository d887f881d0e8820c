import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Design, designOf } from '../../src/fabric/index.ts';
import { gapInElements } from '../../src/gap/inElements.ts';
import type { DesignElement, House } from '../../src/house.ts';
import { invented, inventedDesign } from '../fabric/inventedHouse.ts';

const board = { name: 'Insulation', thicknessMm: 100, conductivityWmK: 0.035 };
const wall = { name: 'Wall', areaM2: 60, buildUp: { layers: [board] } };
const window = { name: 'Window', areaM2: 10, uValue: 1.4, gValue: 0.6 };
const loft = { name: 'Loft', areaM2: 40, to: 'void', uValue: 0.2, temperatureFactor: 0.8 };
const neighbour = { name: 'Party wall', areaM2: 30, to: 'adjacent', uValue: 0.5 };

const designed = (house: House): Design => {
  const design = designOf(house);
  if (design === null) throw new Error('the house has elements');
  return design;
};
const lossOf = (house: House): number => {
  const { heatLoss } = designed(house);
  if (heatLoss === null) throw new Error('the house has a heat loss');
  return heatLoss;
};
/** The gap of a house that loses so much more than drawn [W/K], within 20 % either way. */
const gapsOf = (house: House, excess: number) =>
  gapInElements(house, designed(house), { value: excess, low: 0.8 * excess, high: 1.2 * excess });
/** The house with other transmittances in place of some elements' own. */
const rebuilt = (house: House, uValues: ReadonlyMap<string, number>): House => ({
  ...house,
  elements: (house.elements ?? []).map((element): DesignElement => {
    const uValue = uValues.get(element.name);
    return uValue === undefined ? element : { ...element, uValue };
  }),
});

const anyHouse = fc
  .record({
    wall: fc.double({ min: 20, max: 200, noNaN: true }),
    window: fc.double({ min: 2, max: 40, noNaN: true }),
    loft: fc.double({ min: 20, max: 100, noNaN: true }),
    yValue: fc.double({ min: 0, max: 0.2, noNaN: true }),
    airChangesPerHour: fc.double({ min: 0.1, max: 2, noNaN: true }),
    excess: fc.double({ min: 0.5, max: 200, noNaN: true }),
  })
  .map((it) => ({
    excess: it.excess,
    house: invented({
      volumeM3: 200,
      elements: [
        { ...wall, areaM2: it.wall },
        { ...window, areaM2: it.window },
        { ...loft, areaM2: it.loft },
        neighbour,
      ],
      thermalBridges: { yValue: it.yValue },
      ventilation: { airChangesPerHour: it.airChangesPerHour },
    }),
  }));

test('shared evenly, the U-values put back into the design lose exactly what was measured', () => {
  fc.assert(
    fc.property(anyHouse, ({ house, excess }) => {
      const evenly = gapsOf(house, excess).flatMap(({ name, evenly: it }) =>
        it === null ? [] : [[name, it.value] as const],
      );
      expect(evenly.map(([name]) => name)).toEqual(['Wall', 'Loft']);
      const measured = lossOf(house) + excess;
      expect(lossOf(rebuilt(house, new Map(evenly))) / measured).toBeCloseTo(1, 9);
    }),
  );
});

test('alone in one element, its U-value put back into the design loses exactly what was measured', () => {
  fc.assert(
    fc.property(anyHouse, ({ house, excess }) => {
      for (const { name, alone } of gapsOf(house, excess)) {
        if (alone === null) continue;
        const loss = lossOf(rebuilt(house, new Map([[name, alone.value]])));
        expect(loss / (lossOf(house) + excess)).toBeCloseTo(1, 9);
      }
    }),
  );
});

test('what an element cannot hold alone would explain less than the whole gap even without its insulation', () => {
  fc.assert(
    fc.property(anyHouse, ({ house, excess }) => {
      for (const { name, alone, bare } of gapsOf(house, excess)) {
        const most = lossOf(rebuilt(house, new Map([[name, bare.transmittance]]))) - lossOf(house);
        if (alone === null) expect(most).toBeLessThan(excess);
        expect(bare.share).toBeCloseTo(Math.min(1, most / excess), 9);
      }
    }),
  );
});

test('twice the areas with twice the gap ask for the same U-values', () => {
  fc.assert(
    fc.property(anyHouse, ({ house, excess }) => {
      const doubled = {
        ...house,
        elements: (house.elements ?? []).map((it) => ({ ...it, areaM2: 2 * it.areaM2 })),
      };
      const [own, twice] = [gapsOf(house, excess), gapsOf(doubled, 2 * excess)];
      own.forEach(({ alone, evenly, explanations }, i) => {
        expect(twice[i].alone?.value ?? 0).toBeCloseTo(alone?.value ?? 0, 9);
        expect(twice[i].evenly?.high ?? 0).toBeCloseTo(evenly?.high ?? 0, 9);
        expect(twice[i].explanations.map(({ share }) => share.toFixed(9))).toEqual(
          explanations.map(({ share }) => share.toFixed(9)),
        );
      });
    }),
  );
});

describe('a house of 60 m² of wall that loses 6 W/K more than drawn', () => {
  const house = invented({ elements: [wall, window, neighbour] });
  const [wallGap, windowGap, ...others] = gapsOf(house, 6);

  test('has nothing to say of the wall to the heated neighbour', () => {
    expect(others).toEqual([]);
  });
  // COMPUTED: R = 0.13 + 0.1/0.035 + 0.04 = 3.02714; U = 0.33034; alone 0.33034 + 6/60 = 0.43034
  test('would have a wall of 0.43 if it sat there alone', () => {
    expect(wallGap.drawn).toBeCloseTo(0.33034, 5);
    expect(wallGap.alone?.value).toBeCloseTo(0.43034, 5);
    expect(wallGap.alone?.low).toBeCloseTo(0.41034, 5); // 4.8/60 more
    expect(wallGap.alone?.high).toBeCloseTo(0.45034, 5); // 7.2/60 more
  });
  test('would have windows of 2.0 if it sat in them alone', () => {
    expect(windowGap.alone?.value).toBeCloseTo(1.4 + 6 / 10, 9);
  });
  test('shares nothing of it with the windows, so that the wall alone takes it evenly', () => {
    expect(windowGap.evenly).toBeNull();
    expect(wallGap.evenly?.value).toBeCloseTo(0.43034, 5);
  });
  // COMPUTED by ISO 6946, Annex F (level 2: 0.04 W/(m²K), MEMORY): 0.04·(2.85714/3.02714)² = 0.03563 per m²
  test('could owe up to 36 % of it to joints through which air circulates', () => {
    const joints = wallGap.explanations.find(({ fault }) => fault === 'open-joints');
    expect(joints?.transmittance).toBeCloseTo(0.36598, 4);
    expect(joints?.share).toBeCloseTo((0.03563 * 60) / 6, 3);
  });
  // COMPUTED: without the board 1/0.17 = 5.88235; a tenth of the area 0.1·(5.88235 - 0.33034) = 0.5552 per m²
  test('could owe all of it to a tenth of the wall left without insulation', () => {
    const leftOut = wallGap.explanations.find(({ fault }) => fault === 'insulation-left-out');
    expect(leftOut?.transmittance).toBeCloseTo(0.8855, 3);
    expect(leftOut?.share).toBe(1);
  });
  test('owes nothing to timber that is not there', () => {
    expect(wallGap.explanations.map(({ fault }) => fault)).toEqual(['open-joints', 'insulation-left-out']);
  });
});

describe('a framed wall', () => {
  const timber = { name: 'Studs', fraction: 0.15, conductivityWmK: 0.13 };
  const house = invented({
    elements: [
      {
        name: 'Frame',
        areaM2: 50,
        buildUp: { layers: [{ ...board, thicknessMm: 140, conductivityWmK: 0.04, bridge: timber }] },
      },
    ],
  });
  const [gap] = gapsOf(house, 10);

  // COMPUTED by the combined method. Clear 0.14/0.04 = 3.5, timber 0.14/0.13 = 1.07692; with surfaces 3.67, 1.24692.
  // R' = 1/(0.85/3.67 + 0.15/1.24692) = 2.84178; R'' = 0.17 + 1/(0.85/3.5 + 0.15/1.07692) = 2.78666; U = 0.35535.
  // Timber 0.225: R' = 1/(0.775/3.67 + 0.225/1.24692) = 2.55382;
  // R'' = 0.17 + 1/(0.775/3.5 + 0.225/1.07692) = 2.49383; U = 0.39624.
  test('with half as much timber again loses 0.041 W/(m²K) more', () => {
    const more = gap.explanations.find(({ fault }) => fault === 'more-timber');
    expect(gap.drawn).toBeCloseTo(0.35535, 3);
    expect(more?.transmittance).toBeCloseTo(0.39624, 3);
    expect(more?.share).toBeCloseTo((0.0409 * 50) / 10, 2);
  });
  // COMPUTED: air of 140 mm 0.18 (ISO 6946, Table 8; MEMORY); sections 0.35 and 1.24692.
  // R' = 1/(0.85/0.35 + 0.15/1.24692) = 0.39231; R'' = 0.17 + 1/(0.85/0.18 + 0.15/1.07692) = 0.37569; U = 2.604
  test('keeps its studs and a still air space when the insulation is not there', () => {
    expect(gap.bare.transmittance).toBeCloseTo(2.604, 2);
  });
});

test('a gap beyond what an element loses without insulation cannot sit in it alone', () => {
  const small = { ...wall, name: 'Hatch', areaM2: 0.5 };
  const house = invented({ elements: [wall, small] });
  const [, hatch] = gapsOf(house, 20);
  expect(hatch.alone).toBeNull();
  // COMPUTED: 0.5·(5.88235 - 0.33034)/20
  expect(hatch.bare.share).toBeCloseTo(0.1388, 4);
});

test('no end of an interval is worse than a single pane', () => {
  const house = invented({ elements: [window] });
  // COMPUTED: (1.4·10 + 40)/10 = 5.4; the upper end would be 6.2
  const [gap] = gapsOf(house, 40);
  expect(gap.bare).toMatchObject({ as: 'single pane', transmittance: 5.8 }); // EN 673; MEMORY
  expect(gap.alone?.value).toBeCloseTo(5.4, 9);
  expect(gap.alone?.high).toBe(5.8);
});

test('a house of bare walls shares the gap among all that is opaque', () => {
  const stone = {
    name: 'Stone',
    areaM2: 80,
    buildUp: { layers: [{ name: 'Stone', thicknessMm: 500, conductivityWmK: 2 }] },
  };
  const house = invented({ elements: [stone, window] });
  const [wallGap] = gapsOf(house, 10);
  const design = inventedDesign({ elements: [stone, window] });
  expect(wallGap.evenly?.value).toBeCloseTo((design.elements[0].transmittance ?? 0) + 10 / 80, 9);
  expect(wallGap.explanations).toEqual([]);
});
