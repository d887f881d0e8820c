/** How far from its best the heat loss may lie. */
import { profileEnd } from '../../maths/profileInterval.ts';
import { fitHeld, type StatesFit } from './fitStates.ts';
import type { Inputs } from './inputs.ts';

/** Of the logarithm of the heat loss: the best, and how far its 95 % profile reaches below and above that. */
export interface Profile {
  readonly best: number;
  readonly below: number;
  readonly above: number;
}

const FIRST_REACH = 0.05;

export function profileOf(inputs: Inputs, fit: StatesFit): Profile {
  const best = fit.parameters[0];
  const riseAt = (logHeatLoss: number) => {
    const held = fitHeld(inputs, fit, logHeatLoss, fit.parameters.slice(1));
    return held === null ? Number.POSITIVE_INFINITY : held.objective - fit.objective;
  };
  return {
    best,
    below: best - profileEnd(best, -FIRST_REACH, riseAt),
    above: profileEnd(best, FIRST_REACH, riseAt) - best,
  };
}
