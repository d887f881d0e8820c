/** What the assessment's JSON says of the design, and of a stage's nights together. */
import { describe, expect, test } from 'vitest';
import { assess, assessRecord } from '../src/assess.ts';
import { type Assessment, assessmentSchema } from '../src/assessment.ts';
import { reportOf } from '../src/report.ts';
import { HOUR, recordOf } from './cooling/nightsAtHand.ts';
import { invented } from './fabric/inventedHouse.ts';

/** Four invented winter days, a reading an hour. */
const log = (temperature: (hour: number) => number) =>
  new TextEncoder().encode(
    [
      'time,temperature °C',
      ...Array.from({ length: 96 }, (_, hour) => {
        const [day, clock] = [Math.floor(hour / 24) + 10, String(hour % 24).padStart(2, '0')];
        return `2027-01-${day} ${clock}:00:00,${temperature(hour).toFixed(2)}`;
      }),
    ].join('\n'),
  );
const files = new Map([
  ['inside.csv', log((hour) => 20 - (hour % 24) / 10)],
  ['outside.csv', log((hour) => 4 + 2 * Math.sin(hour / 4))],
]);

function assessmentOf(elements: object[]): Assessment {
  const loggers = [
    { file: 'inside.csv', place: 'inside' },
    { file: 'outside.csv', place: 'outside' },
  ];
  const assessing = assess(invented({ loggers, floorAreaM2: 50, elements }), files);
  if (assessing.kind !== 'assessed') throw new Error('the house has its logs');
  return assessmentSchema.parse(reportOf(assessing.evidence));
}

const steel = { name: 'steel stud', widthMm: 1.2, spacingMm: 600, conductivityWmK: 50 };
const wool = { name: 'wool', thicknessMm: 100, conductivityWmK: 0.035, bridge: steel };
const wall = { name: 'Steel wall', areaM2: 40, buildUp: { layers: [wool] } };

describe('an element whose layers are refused', () => {
  const assessment = assessmentOf([wall, { name: 'Roof', areaM2: 60, uValue: 0.15 }]);
  test('leaves no design to set a measurement beside, and the warnings say why', () => {
    expect(assessment.design).toBeNull();
    expect(assessment.stages.map(({ gap }) => gap)).toEqual([null]);
    const codes = assessment.warnings.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['no-transmittance', 'metal-bridges-insulation']));
    expect(assessment.warnings.find(({ code }) => code === 'no-transmittance')?.text).toContain('Steel wall');
  });
});

test('the design carries 95 % of each of its figures, and what would flow to neighbours apart', () => {
  const { design } = assessmentOf([
    { ...wall, uValue: 0.45 },
    { name: 'Party wall', areaM2: 30, uValue: 0.5, to: 'adjacent' },
  ]);
  // COMPUTED by hand: 40·0.45 = 18 W/K, 5 % of it (PRACTICE) times 1.96
  expect(design?.ranges.fabricWK).toEqual({
    value: 18,
    low: expect.closeTo(16.236, 9),
    high: expect.closeTo(19.764, 9),
  });
  expect(design?.ranges.elementsWK).toHaveLength(2);
  expect(design?.toNeighboursWK).toBe(15);
  expect(design?.elements.map(({ heatLossWK }) => heatLossWK)).toEqual([18, 0]);
});

test('a wall to neighbours without a U-value stays in its place among the elements', () => {
  const { design } = assessmentOf([
    { ...wall, name: 'Party wall', to: 'adjacent' },
    { name: 'Walls', areaM2: 40, uValue: 0.45 },
  ]);
  expect(design?.elements.map(({ name, uValue, heatLossWK }) => [name, uValue, heatLossWK])).toEqual([
    ['Party wall', null, 0],
    ['Walls', 0.45, 18],
  ]);
  expect(design?.ranges.elementsWK[1]?.value).toBe(18);
  expect(design?.toNeighboursWK).toBeNull();
});

describe('a stage’s nights together', () => {
  const house = invented({ loggers: [{ file: 'a.csv', place: 'inside' }] });
  /** The attic falls twice as fast as the house, the hall as it does; it cools from 20:00 towards 5 °C. */
  const record = recordOf({
    days: 6,
    timeConstant: 40 * HOUR,
    rooms: [
      { room: 'Attic', place: 'inside', temperature: (_, inside) => 5 + (inside - 5) ** 2 / 15 },
      { room: 'Hall', place: 'inside', temperature: (_, inside) => inside },
    ],
  });
  const evidence = { house, accounts: [], record, ...assessRecord(house, record) };
  const [stage] = assessmentSchema.parse(reportOf(evidence)).stages;

  test('each room has its hours, and its ratio to the house', () => {
    const rooms = stage.rooms?.map(({ room, timeConstantH, ratio }) => [
      room,
      timeConstantH.value,
      ratio.value,
    ]);
    expect(rooms).toEqual([
      ['Attic', expect.closeTo(20, 6), expect.closeTo(0.5, 6)],
      ['Hall', expect.closeTo(40, 6), expect.closeTo(1, 6)],
    ]);
    expect(stage.notes.find(({ code }) => code === 'room-cools-fastest')?.text).toContain('“Attic”');
  });

  test('a plain exponential is the same whenever it is begun, and whichever night is left out', () => {
    expect(stage.laterStarts?.moves).toBe(false);
    expect(
      stage.laterStarts?.starts.map(({ laterH, timeConstantH }) => [laterH, timeConstantH.value]),
    ).toEqual([0, 1, 2, 3].map((later) => [later, expect.closeTo(40, 6)]));
    expect(stage.leaveOneOut?.lowestTimeConstantH).toBeCloseTo(40, 6);
    expect(stage.leaveOneOut?.highestTimeConstantH).toBeCloseTo(40, 6);
  });

  test('with one night and one room there is nothing to set beside it', () => {
    const short = recordOf({ days: 1 });
    const [lone] = reportOf({ house, accounts: [], record: short, ...assessRecord(house, short) }).stages;
    expect([lone.laterStarts, lone.leaveOneOut, lone.rooms]).toEqual([undefined, undefined, undefined]);
  });
});
