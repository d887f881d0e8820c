/** What each element would have to be if the gap sat in it alone, and if all insulated ones shared it evenly. */
import { sum } from 'simple-statistics';
import type { Estimate } from '../assessment.ts';
import type { Design, ElementDesign } from '../fabric/index.ts';
import type { House } from '../house.ts';
import { type Explanation, explanationsOf } from './explanations.ts';
import { type Bare, isInsulated, withoutInsulation } from './withoutInsulation.ts';

/** Of one element; transmittances in W/(m²K). */
export interface ElementGap {
  readonly name: string;
  readonly drawn: number;
  /** With the whole gap in it, no end of it worse than `bare`; null where even that would lose less. */
  readonly alone: Estimate | null;
  /** The worst it can be, and what that would explain of the gap at most [–]. */
  readonly bare: Bare & { readonly share: number };
  /** With its part of a gap that all insulated elements share; null for those that do not. */
  readonly evenly: Estimate | null;
  readonly explanations: readonly Explanation[];
}

/**
 * The gap in each element that is not a neighbour's, in the order of the house: put back into the design, each
 * `alone` by itself, or all `evenly` together, give exactly what was measured. Bridges, ventilation and windows stay
 * as drawn when it is shared evenly. None where an element has no transmittance.
 *
 * @param excess measured less designed heat loss [W/K], its value above zero
 */
export function gapInElements(house: House, { elements }: Design, excess: Estimate): ElementGap[] {
  const shell = elements.filter(({ to }) => to !== 'adjacent');
  const factor = evenFactor(shell, excess);
  return shell.flatMap((element) => {
    const entry = house.elements?.[elements.indexOf(element)];
    const { name, area, temperatureFactor, transmittance } = element;
    if (entry === undefined || transmittance === null) return [];
    const per = area * temperatureFactor;
    const bare = withoutInsulation(entry, element, transmittance);
    const carries = per > 0 && transmittance + excess.value / per <= bare.transmittance;
    return [
      {
        name,
        drawn: transmittance,
        alone: carries
          ? mapped(excess, (it) => Math.min(bare.transmittance, transmittance + it / per))
          : null,
        bare: { ...bare, share: Math.min(1, ((bare.transmittance - transmittance) * per) / excess.value) },
        evenly:
          factor !== null && sharing(shell).includes(element)
            ? mapped(factor, (it) => transmittance * it)
            : null,
        explanations: explanationsOf(entry, element, transmittance, excess.value),
      },
    ];
  });
}

/** What all that share it lose more than drawn [–]; null where none of them loses anything. */
function evenFactor(shell: readonly ElementDesign[], excess: Estimate): Estimate | null {
  const shared = sum(sharing(shell).map(({ heatLoss }) => heatLoss ?? 0));
  return shared > 0 ? mapped(excess, (it) => 1 + it / shared) : null;
}

/** Those known to be insulated or known by their transmittance alone; all that are opaque where none is. */
function sharing(shell: readonly ElementDesign[]): ElementDesign[] {
  const opaque = shell.filter(({ glazed }) => !glazed);
  const insulated = opaque.filter((it) => it.buildUp === null || isInsulated(it));
  return insulated.length > 0 ? insulated : opaque;
}

/** An end that would be below nothing is nothing. */
const mapped = ({ value, low, high }: Estimate, to: (it: number) => number): Estimate => ({
  value: to(value),
  low: Math.max(0, to(low)),
  high: to(high),
});
