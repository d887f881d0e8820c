/** A house, its stages and its record as the network is fitted to them, and what it loses per kelvin. */
import type { Grid } from '../../series/grid.ts';
import { type Leakage, meanLeakage, windShareOf } from './leakage.ts';
import type { NetworkModel } from './model.ts';
import { type Prior, readParameters } from './parameters.ts';
import { slabTransmittance } from './slab.ts';
import type { Span } from './spans.ts';
import type { Surroundings } from './surroundings.ts';

export interface NetworkStage {
  /** All with the same elements in the same order; one that is missing has no area. */
  readonly model: NetworkModel;
  /** The instant of the grid from which it stands; of the first stage, from which the record is gone through. */
  readonly from: number;
}

export interface NetworkProblem {
  readonly grid: Grid;
  readonly surroundings: Surroundings;
  readonly leakage: Leakage;
  readonly stages: readonly NetworkStage[];
  /** The instant of the grid after which nothing counts. */
  readonly to: number;
  readonly spans: readonly Span[];
  /** As stated [W]. */
  readonly constantGains: number;
  /** 1 at instants whose heat is all metered. */
  readonly metered: Uint8Array;
  readonly priors: readonly Prior[];
}

/** The instant up to which a stage stands. */
export const endOf = ({ stages, to }: NetworkProblem, stage: number): number => stages[stage + 1]?.from ?? to;

/** Heat-loss coefficient of a stage at given parameters [W/K]: fabric as U × A, bridges, and the leakage of its spans. */
export function heatLossAt(problem: NetworkProblem, x: ArrayLike<number>, stage: number): number {
  const { own, shared } = readParameters(x, stage, problem.stages.length);
  const { model } = problem.stages[stage];
  const insulation = Math.exp(own('insulation'));
  const fabric = model.elements.reduce(
    (sum, { area, slab, fixed, temperatureFactor }) =>
      sum + area * temperatureFactor * slabTransmittance(slab, fixed ? 1 : insulation),
    0,
  );
  const spans = problem.spans.filter((it) => it.stage === stage);
  const mean = meanLeakage(problem.leakage, spans, windShareOf(shared));
  return fabric + model.bridges + model.ventilation * Math.exp(own('leakage')) * mean;
}
