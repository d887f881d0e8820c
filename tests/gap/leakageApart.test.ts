import { describe, expect, test } from 'vitest';
import { leakageOf } from '../../src/heatloss/network/leakage.ts';
import { leakageApart } from '../../src/heatloss/network/leakageApart.ts';
import { modelOf } from '../../src/heatloss/network/model.ts';
import { sharedKeys, stageKeys } from '../../src/heatloss/network/parameters.ts';
import { heatLossAt, type NetworkProblem } from '../../src/heatloss/network/problem.ts';
import { surroundingsOf } from '../../src/heatloss/network/surroundings.ts';
import { logInterval } from '../../src/maths/logInterval.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { say } from '../../src/words/index.ts';
import { invented, inventedDesign } from '../fabric/inventedHouse.ts';

/** 30 W/K of fabric, 5 of bridges, 0.33·0.5·200 = 33 W/K of air. */
const parts = {
  volumeM3: 200,
  floorAreaM2: 80,
  elements: [{ name: 'Wall', areaM2: 100, uValue: 0.3 }],
  thermalBridges: { psiLengthWK: 5 },
  ventilation: { airChangesPerHour: 0.5 },
};
const HOURS_PER_NIGHT = 10;
const steadily = (count: number, value: number) => new Float64Array(count).fill(value);

/** Nights of ten hours at 20 °C inside and 8 °C outside, each with a wind of its own [m/s]. */
function problemWith(winds: readonly number[] | null, nights = winds?.length ?? 8): NetworkProblem {
  const length = nights * HOURS_PER_NIGHT;
  const house = invented(parts);
  const model = modelOf(house, inventedDesign(parts));
  if (model === null) throw new Error('the house has a network');
  const record: HouseRecord = {
    grid: { start: 1_800_000_000, step: 3600, length },
    rooms: [],
    insideTemperature: steadily(length, 20),
    outsideTemperature: steadily(length, 8),
    windSpeed: winds && Float64Array.from({ length }, (_, k) => winds[Math.floor(k / HOURS_PER_NIGHT)]),
    irradiance: null,
    heatingPower: null,
    differenceSd: 0.1,
    insideResolution: 0.1,
    heatingPowerSd: 0,
  };
  const surroundings = surroundingsOf(house, record, model);
  return {
    grid: record.grid,
    surroundings,
    leakage: leakageOf(surroundings),
    stages: [{ model, from: 0 }],
    to: length - 1,
    spans: Array.from({ length: nights }, (_, night) => ({
      kind: 'free',
      stage: 0,
      blocks: [{ from: night * HOURS_PER_NIGHT, to: (night + 1) * HOURS_PER_NIGHT, sinceStart: 0 }],
    })) as NetworkProblem['spans'],
    constantGains: 0,
    metered: new Uint8Array(length),
    priors: [...stageKeys, ...sharedKeys].map(() => ({ mean: 0, sd: 1 })),
  };
}

/** All as drawn, the logarithm of the leakage known to a standard deviation, all else exactly. */
function apartWith(problem: NetworkProblem, leakageSd: number) {
  const size = stageKeys.length + sharedKeys.length;
  const own = stageKeys.indexOf('leakage');
  const square = (at: number) =>
    Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (__, k) => (i === own && k === own ? at : 0)),
    );
  const posterior = {
    parameters: new Float64Array(size),
    residuals: new Float64Array(0),
    covariance: square(leakageSd ** 2),
    information: square(1 / leakageSd ** 2 - 1),
  };
  const whole = logInterval(heatLossAt(problem, posterior.parameters, 0), 0.05);
  return { whole, apart: leakageApart(problem, posterior, whole, 0) };
}
const windy = [1, 2, 3, 4, 5, 6, 7, 8];

describe('a house of 35 W/K of shell and 33 W/K of air as drawn', () => {
  const { whole, apart } = apartWith(problemWith(windy), 0.2);
  if (apart.kind !== 'told apart') throw new Error(`not told apart: ${apart.why.code}`);

  test('is told apart where windy nights and calm ones narrow the leakage', () => {
    // COMPUTED: 0.33·0.5·200
    expect(apart.leakage.value).toBeCloseTo(33, 6);
  });
  test('has parts that add up to the whole', () => {
    expect(apart.leakage.value + apart.fabric.value).toBeCloseTo(whole.value, 9);
  });
  test('has leakage to a factor of two and a half, not to a watt', () => {
    // COMPUTED: 1.96·√(0.2² + 0.4²) = 0.87653; e^0.87653 = 2.4026
    expect(apart.leakage.value / apart.leakage.low).toBeCloseTo(2.4026, 3);
  });
  test('has no more leakage than the whole', () => {
    expect(apart.leakage.high).toBe(whole.high);
  });
  test('has a fabric as unsure as the leakage leaves it', () => {
    expect(apart.fabric.high - apart.fabric.value).toBeGreaterThan(apart.leakage.value - apart.leakage.low);
    expect(apart.fabric.low).toBeGreaterThanOrEqual(0);
  });
});

test.each([
  ['no wind was logged', problemWith(null), 0.2, 'apart-no-wind'],
  ['there are four nights', problemWith([1, 4, 7, 9]), 0.2, 'apart-too-few-nights'],
  ['every night is as windy as the next', problemWith([4, 4.1, 4, 4.2, 3.9, 4]), 0.2, 'apart-wind-steady'],
  ['the nights tell hardly more than was believed before', problemWith(windy), 0.9, 'apart-too-wide'],
] as const)('cannot be told apart where %s, and it is said why', (_, problem, sd, code) => {
  const { apart } = apartWith(problem, sd);
  if (apart.kind === 'told apart') throw new Error('told apart');
  expect(apart.why.code).toBe(code);
  expect(say(apart.why).text).toContain('cannot be told apart');
});
