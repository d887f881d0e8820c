/** Elements that a stage does not have yet hold no heat in it. */
import { expect, test } from 'vitest';
import { measureStage, wholeRecord } from '../../src/assessing/measured.ts';
import { judgeNights } from '../../src/cooling/index.ts';
import { designOf } from '../../src/fabric/index.ts';
import { nightsOf, recordOf } from '../cooling/nightsAtHand.ts';
import { house as named } from './meteredHouse.ts';

const house = named({
  elements: [
    { name: 'Walls', areaM2: 100, uValue: 0.5, massClass: 'heavy' },
    { name: 'Extension', areaM2: 100, uValue: 0.5, massClass: 'heavy' },
  ],
});
const record = recordOf({ days: 6 });
const nights = judgeNights(record, nightsOf(record));

test('a stage without half of the mass loses half as much at the same time constant', () => {
  const lossWith = (missing: readonly string[]) => {
    const stage = { ...wholeRecord(record, nights), missing };
    const restsOn = { house, record, design: designOf(house), neighbour: null, differenceSd: 0.2, nights };
    const { estimates } = measureStage(stage, restsOn);
    return estimates.find(({ method }) => method === 'capacity-over-tau')?.heatLossCoefficient.value ?? 0;
  };
  expect(lossWith([])).toBeGreaterThan(0);
  expect(lossWith(['Extension']) / lossWith([])).toBeCloseTo(0.5, 9);
});
