/** How many states a record can tell apart. */
import jStat from 'jstat';
import { fitStates, type StatesFit } from './fitStates.ts';
import type { Inputs } from './inputs.ts';
import type { Scale, States } from './thermalModel.ts';

/** A further state must better the fit by more than chance does in one of twenty. */
const SIGNIFICANT = 0.05;

/**
 * Forward selection: one more state as long as the likelihood ratio says so.
 *
 * @returns the fits, from one state to the number chosen; empty where not even one state could be fitted
 * @see Bacher and Madsen, Energy and Buildings 43 (2011) 1511, doi:10.1016/j.enbuild.2011.02.005
 */
export function chooseStates(inputs: Inputs, scale: Scale): StatesFit[] {
  const chosen: StatesFit[] = [];
  for (const states of [1, 2, 3] as const) {
    const before = chosen[chosen.length - 1];
    const fit = bestFit(inputs, states, scale, before);
    if (fit === null || (before !== undefined && !betters(fit, before))) break;
    chosen.push(fit);
  }
  return chosen;
}

/** Three states from where two ended, and from the priors as well: there is more than one peak. */
function bestFit(
  inputs: Inputs,
  states: States,
  scale: Scale,
  before: StatesFit | undefined,
): StatesFit | null {
  const afresh = fitStates(inputs, states, scale);
  if (states < 3 || before === undefined) return afresh;
  const further = fitStates(inputs, states, scale, before.parameters);
  return further !== null && (afresh === null || further.objective < afresh.objective) ? further : afresh;
}

function betters(fit: StatesFit, before: StatesFit): boolean {
  const ratio = before.deviance - fit.deviance;
  const added = fit.priors.length - before.priors.length;
  return ratio > 0 && 1 - jStat.chisquare.cdf(ratio, added) < SIGNIFICANT;
}
