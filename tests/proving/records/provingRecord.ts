/** What a method is given to read of a simulated house, and the truth that it is judged by. */
import type { House } from '../../../src/house.ts';
import type { HouseRecord } from '../../../src/series/record.ts';

/** How much a builder knows and did; each is judged apart. */
export const tiers = [
  'loggers, layers known',
  'loggers, U-values and a capacity figure',
  'one heated night',
  'metered days, irradiance',
  'metered days, no irradiance',
  'before and after',
] as const;
export type ProvingTier = (typeof tiers)[number];

export interface StageTruth {
  readonly name: string;
  /** By the contract: fabric with the surface resistances of ISO 6946, bridges, and 0.33 V times mean leakage [W/K]. */
  readonly heatLossCoefficient: number;
  /** Fabric and bridges [W/K]. */
  readonly fabric: number;
  /** [W/K] */
  readonly leakage: number;
}

export interface Truth {
  readonly stages: readonly StageTruth[];
  /** Heat loss after over before; null where there is one stage. */
  readonly ratio: number | null;
  /** Of the last stage, over the design as tested. */
  readonly ratioToDesign: number;
}

/** How the house strays from its drawings, for telling what was drawn. */
export interface Strays {
  /** Fabric and bridges as built over as drawn. */
  readonly fabric: number;
  readonly mass: number;
  /** Mean leakage of the nights over the drawn as-tested air changes. */
  readonly leakage: number;
}

export interface ProvingRecord {
  readonly tier: ProvingTier;
  readonly type: string;
  readonly seed: number;
  readonly house: House;
  readonly record: HouseRecord;
  /** The same grid with temperatures as they were: no logger's bias, noise, lag, rounding or clock. */
  readonly noiseFree: HouseRecord;
  readonly truth: Truth;
  readonly strays: Strays;
}
