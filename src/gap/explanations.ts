/** How much of the gap usual faults of building could explain in one element: from the layers as drawn, not measured. */
import { type Fault, faults } from '../assessment.ts';
import type { LayerBridge } from '../fabric/buildUp.ts';
import { correctionsFrom, type ElementDesign } from '../fabric/index.ts';
import { throughLayers } from '../fabric/throughLayers.ts';
import type { DesignElement } from '../house.ts';
import { isInsulated, withoutInsulation } from './withoutInsulation.ts';

export interface Explanation {
  readonly fault: Fault;
  /** What the element would come to [W/(m²K)]. */
  readonly transmittance: number;
  /** Of the gap [–, 0 to 1]. */
  readonly share: number;
}

/** Timber counted on the drawing against what stands: two of the standard deviations that the design side takes. PRACTICE. */
const MORE_TIMBER = 1.5;
/** Of the element's area. PRACTICE. */
const LEFT_OUT = 0.1;

/**
 * What each fault would explain, those that change nothing left out; none of an element without insulated layers.
 *
 * Joints that let air circulate around the insulation (level 2 of ISO 6946:2017, Annex F, in place of the drawn
 * one), half as much timber again, and a tenth of the area without insulation.
 *
 * @param transmittance of the element as drawn [W/(m²K)]
 * @param excess        measured less designed heat loss [W/K], above zero
 */
export function explanationsOf(
  entry: DesignElement,
  element: ElementDesign,
  transmittance: number,
  excess: number,
): Explanation[] {
  const { buildUp, area, temperatureFactor } = element;
  if (buildUp === null || !isInsulated(element)) return [];
  const asked = correctionsFrom(entry);
  const drawn = throughLayers(entry, buildUp, asked).transmittance;
  if (drawn === null) return [];
  const layers = buildUp.layers.map((layer) => ({ ...layer, bridge: layer.bridge && widened(layer.bridge) }));
  const worse: Readonly<Record<Fault, number | null>> = {
    'open-joints': throughLayers(entry, buildUp, { ...asked, airGapLevel: 2 }).transmittance,
    'more-timber': throughLayers(entry, { ...buildUp, layers }, asked).transmittance,
    'insulation-left-out':
      drawn + LEFT_OUT * (withoutInsulation(entry, element, drawn).transmittance - drawn),
  };
  return faults.flatMap((fault) => {
    const more = (worse[fault] ?? drawn) - drawn;
    const share = Math.min(1, (more * area * temperatureFactor) / excess);
    if (share < HARDLY_ANY) return [];
    return [{ fault, transmittance: transmittance + more, share }];
  });
}

/** A share that would be told as nothing [–]. */
const HARDLY_ANY = 0.005;

const widened = (bridge: LayerBridge): LayerBridge => ({
  ...bridge,
  fraction: Math.min(1, bridge.fraction * MORE_TIMBER),
});
