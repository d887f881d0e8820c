/** What the network does not know: each parameter with what is believed of it before the readings are looked at. */
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
/** Of what glass, frames and shade make of a sun that was logged. PRACTICE. */
export const SUN_LOGGED_SD = 0.4;
/** Of what nobody counts: standby, a fridge, people about [W/m²]. PRACTICE. */
const GAINS_SD_PER_FLOOR = 0.3;

/** @param dryingSd what drying may draw, one standard deviation [W] */
export function priorsOf(
  model: NetworkModel,
  surroundings: Surroundings,
  record: HouseRecord,
  constantGains: number,
  stages: number,
  dryingSd = 0,
): Prior[] {
  const shared: Readonly<Record<SharedKey, Prior>> = {
    mass: { mean: 0, sd: model.capacitySd },
    furniture: { mean: 0, sd: 0.5 },
    convection: { mean: 0, sd: 0.3 },
    gains: {
      mean: 0,
      sd: Math.hypot(GAINS_SHARE_SD * constantGains, GAINS_SD_PER_FLOOR * model.furnitureArea, dryingSd),
    },
    sun: { mean: 0, sd: surroundings.sunLogged ? SUN_LOGGED_SD : 0.6 },
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
export interface Parameters {
  own(key: StageKey): number;
  shared(key: SharedKey): number;
}

export function readParameters(x: ArrayLike<number>, stage: number, stages: number): Parameters {
  return {
    own: (key) => x[stage * stageKeys.length + stageKeys.indexOf(key)],
    shared: (key) => x[stages * stageKeys.length + sharedKeys.indexOf(key)],
  };
}

/** Which parameter stands at a place, and of which stage. */
export type Place = { readonly own: StageKey; readonly stage: number } | { readonly shared: SharedKey };

export function placeOf(k: number, stages: number): Place {
  const count = stageKeys.length;
  return k < stages * count
    ? { own: stageKeys[k % count], stage: Math.floor(k / count) }
    : { shared: sharedKeys[k - stages * count] };
}

/** The places of those that one stage hangs on: its own, then what all share. */
export const placesOf = (stage: number, stages: number): number[] => [
  ...stageKeys.map((_, k) => stage * stageKeys.length + k),
  ...sharedKeys.map((_, k) => stages * stageKeys.length + k),
];

/** The place of a shared parameter. */
export const sharedPlace = (key: SharedKey, stages: number): number =>
  stages * stageKeys.length + sharedKeys.indexOf(key);
