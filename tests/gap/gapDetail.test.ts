import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Estimate } from '../../src/assessment.ts';
import { designOf } from '../../src/fabric/index.ts';
import { gapOf } from '../../src/gap/index.ts';
import { meanTransmittanceOf } from '../../src/gap/meanTransmittance.ts';
import type { House } from '../../src/house.ts';
import { say } from '../../src/words/index.ts';
import { codesOf, invented, inventedDesign } from '../fabric/inventedHouse.ts';

const elements = [
  {
    name: 'Wall',
    areaM2: 100,
    buildUp: { layers: [{ name: 'Insulation', thicknessMm: 100, conductivityWmK: 0.035 }] },
  },
  { name: 'Party wall', areaM2: 30, to: 'adjacent', uValue: 0.5 },
];
/** Wall 33.034 W/K, bridges 5 W/K; air as drawn 0.33·1·200 = 66 W/K, as tested 0.33·0.2·200 = 13.2 W/K. */
const house = invented({
  volumeM3: 200,
  elements,
  thermalBridges: { psiLengthWK: 5 },
  ventilation: { airChangesPerHour: 1, asTestedAirChangesPerHour: 0.2 },
});

function gapAt(heatLoss: Estimate, of: House = house, finished = true, agree = true) {
  const design = designOf(of);
  const drawn = design?.heatLossAsTested ?? design?.heatLoss ?? null;
  if (design === null || drawn === null) throw new Error('the house has a design');
  return gapOf({ house: of, design, heatLoss, drawn, finished, agree });
}
const around = (value: number, off = 5): Estimate => ({ value, low: value - off, high: value + off });

describe('a finished house of 51.2 W/K as tested', () => {
  // COMPUTED: 33.0344 + 5 + 13.2 = 51.2344
  test('measured at 71.2 W/K loses 20 W/K more than drawn', () => {
    const { detail, verdict } = gapAt(around(71.2344));
    expect(verdict).toBe('exceeds');
    expect(detail?.excess.value).toBeCloseTo(20, 3);
    expect(detail?.excess.low).toBeCloseTo(15, 3);
    expect(detail?.elements.map(({ name }) => name)).toEqual(['Wall']);
  });

  test('has a mean U-value of 0.58 with the air as tested taken out, bridges left in', () => {
    const mean = gapAt(around(71.2344)).detail?.mean;
    expect(mean?.measured.value).toBeCloseTo(0.580344, 5);
    expect(mean?.drawn).toBeCloseTo(0.380344, 5);
    // COMPUTED: 5 W/K measured either way and air of 0.4 to 2.5 times 13.2 W/K (PRACTICE), so 19.8 W/K more and
    // 7.92 W/K less of it: √(25 + 392.04) = 20.4216 below, √(25 + 62.7264) = 9.3662 above
    expect(mean?.measured.low).toBeCloseTo(0.580344 - 0.204216, 5);
    expect(mean?.measured.high).toBeCloseTo(0.580344 + 0.093662, 5);
  });

  test('measured below the design is told as good news, and no element is named', () => {
    const { detail } = gapAt(around(45));
    expect(detail?.elements).toEqual([]);
    expect(codesOf(detail?.notes ?? [])).toContain('gap-none');
    expect(codesOf(detail?.notes ?? [])).not.toContain('gap-in-elements');
    expect(say({ code: 'gap-none', sure: true, less: 6.2344, most: -1.2 }).text).toBe(
      'By the best figure it loses 6.23 W/K less than drawn: good news, and no gap to place in any element.',
    );
    expect(say({ code: 'gap-none', sure: true, less: 6.2344, most: 3 }).text).toContain(
      'allows for 3.00 W/K more',
    );
  });

  test('whose range reaches down to the design may have no gap at all', () => {
    expect(codesOf(gapAt(around(54)).detail?.notes ?? [])).toContain('gap-may-be-none');
    expect(codesOf(gapAt(around(71)).detail?.notes ?? [])).not.toContain('gap-may-be-none');
  });

  test('says that the design’s own doubt would cover a small gap, and not a large one', () => {
    expect(codesOf(gapAt(around(53, 1)).detail?.notes ?? [])).toContain('gap-within-design');
    expect(codesOf(gapAt(around(90, 1)).detail?.notes ?? [])).not.toContain('gap-within-design');
  });

  test('names what stands on either side, and the neighbour’s wall as left out', () => {
    const note = gapAt(around(71)).detail?.notes[0];
    if (note === undefined) throw new Error('there is a note');
    const { text } = say(note);
    expect(text).toContain('as tested (vents shut, fans off), 51.2 W/K');
    expect(text).toContain('Left out on both sides: “Party wall”');
  });
});

test('a stage that is not finished has a ratio but neither verdict nor elements', () => {
  expect(gapAt(around(71), house, false)).toMatchObject({ verdict: null, detail: null });
});

test('ways that contradict each other leave the verdict open', () => {
  expect(gapAt(around(71), house, true, false).verdict).toBe('undecided');
});

test('without a ventilation in the design there is no mean U-value without it', () => {
  const { detail } = gapAt(around(71), invented({ elements }));
  expect(detail?.mean).toBeNull();
  expect(codesOf(detail?.notes ?? [])).toContain('gap-without-air');
});

test('what was drawn, measured exactly, has the mean U-value as drawn', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 500, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (areaM2, psiLengthWK) => {
        const design = inventedDesign({
          volumeM3: 200,
          elements: [{ name: 'Wall', areaM2, uValue: 0.3 }],
          thermalBridges: { psiLengthWK },
          ventilation: { airChangesPerHour: 0.5 },
        });
        const heatLoss = design.heatLoss ?? Number.NaN;
        const exactly = (value: number): Estimate => ({ value, low: value, high: value });
        const mean = meanTransmittanceOf(exactly(heatLoss), exactly(design.ventilation), design);
        expect(mean?.measured.value).toBeCloseTo(design.meanTransmittance ?? Number.NaN, 9);
      },
    ),
  );
});

describe('what is no verdict', () => {
  test('more than drawn, where the design states no air, is not told as a fault', () => {
    const { verdict, detail } = gapAt(around(120), invented({ volumeM3: 200, elements }));
    expect(verdict).toBe('undecided');
    expect(detail?.elements).toEqual([]);
    expect(codesOf(detail?.notes ?? [])).toContain('gap-without-air');
  });
});
