/** What the network does not know: each parameter with what is believed of it before the readings are looked at. */
import type { House } from '../../house.ts';
import type { HouseRecord } from '../../series/record.ts';
import type { NetworkModel } from './model.ts';
import type { Surroundings } from './surroundings.ts';

/** Of each stage. */
export const stageKeys = ['insulation', 'leakage'] as const;
/** Shared by all stages: one house, one winter, the same loggers. */
export const sharedKeys = [
  'mass',
  'furniture',
  'convection',
  'gains',
  'sun',
  'wind',
  'sky',
  'ground',
  'neighbour',
  'loggers',
  'start',
  'radiantShare',
  'settling',
] as const;

export type StageKey = (typeof stageKeys)[number];
export type SharedKey = (typeof sharedKeys)[number];

/** Factors are logarithms; gains in W, temperatures in K, the wind's share as a logit. */
export interface Prior {
  readonly mean: number;
  readonly sd: number;
}

/** Even loggers that lay side by side are not surer than this [K]. PRACTICE. */
const LEAST_DIFFERENCE_SD = 0.03;
/** Nearly flat: a tight one would pull the answer to the design. */
const STAGE_PRIOR: Prior = { mean: 0, sd: 1 };
const GAINS_SHARE_SD = 0.4;
/** Of what nobody counts: standby, a fridge, people about [W/m²]. PRACTICE. */
const GAINS_SD_PER_FLOOR = 0.3;

/**
 * Plaster and screed that dry draw heat: 10 litres a day take 280 W, at 2.45 MJ/kg. How much it is nobody knows, so
 * it widens [W]; after so many weeks it is little.
 */
const DRYING_SD = 150;
const DRYING_WEEKS = 8;

export function priorsOf(
  model: NetworkModel,
  surroundings: Surroundings,
  record: HouseRecord,
  constantGains: number,
  stages: number,
  conditions: House['conditions'] = {},
): Prior[] {
  const { wetTradesWithinWeeks: weeks } = conditions;
  const drying =
    weeks === undefined || weeks > DRYING_WEEKS ? 0 : DRYING_SD * (1 - weeks / (DRYING_WEEKS + 1));
  const shared: Readonly<Record<SharedKey, Prior>> = {
    mass: { mean: 0, sd: model.capacitySd },
    furniture: { mean: 0, sd: 0.5 },
    convection: { mean: 0, sd: 0.3 },
    gains: {
      mean: 0,
      sd: Math.hypot(GAINS_SHARE_SD * constantGains, GAINS_SD_PER_FLOOR * model.furnitureArea, drying),
    },
    sun: { mean: 0, sd: surroundings.sunLogged ? 0.4 : 0.6 },
    wind: { mean: 0, sd: 0.8 },
    sky: { mean: 0, sd: 3 },
    ground: { mean: 0, sd: 2.5 },
    neighbour: { mean: 0, sd: surroundings.neighbour.sd },
    loggers: { mean: 0, sd: Math.max(LEAST_DIFFERENCE_SD, record.differenceSd) },
    start: { mean: 0, sd: 1.5 },
    radiantShare: { mean: 0, sd: 0.1 },
    settling: { mean: 0, sd: 2 },
  };
  return [
    ...Array.from({ length: stages }, () => stageKeys.map(() => STAGE_PRIOR)).flat(),
    ...sharedKeys.map((key) => shared[key]),
  ];
}

/** The parameters by name, of one stage. */
export function readParameters(x: ArrayLike<number>, stage: number, stages: number) {
  const shared = (key: SharedKey) => x[stages * stageKeys.length + sharedKeys.indexOf(key)];
  const own = (key: StageKey) => x[stage * stageKeys.length + stageKeys.indexOf(key)];
  return { own, shared };
}
