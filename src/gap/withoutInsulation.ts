/** What an element comes to when its insulation is not there: the worst it can be while the rest stands as drawn. */
import type { AirLayer, BuildUp, BuildUpLayer } from '../fabric/buildUp.ts';
import { noCorrections } from '../fabric/corrections.ts';
import type { ElementDesign } from '../fabric/index.ts';
import { insulates } from '../fabric/refusals.ts';
import { throughLayers } from '../fabric/throughLayers.ts';
import type { DesignElement } from '../house.ts';

/** A layer stated by its resistance alone insulates from here on [m²K/W]: more than any cavity. PRACTICE. */
const LEAST_RESISTANCE = 0.3;
/** A pane of glass [W/(m²K)]. EN 673; MEMORY. */
const SINGLE_PANE = 5.8;
/** An uninsulated flat roof has 2.57, and no usual wall or floor more [W/(m²K)]. PRACTICE. */
const OPAQUE = 2.6;

const holdsHeatIn = (layer: BuildUpLayer): boolean =>
  insulates(layer) ||
  (layer.kind === 'stated' && layer.thickness === null && layer.resistance >= LEAST_RESISTANCE);

export const isInsulated = ({ buildUp }: ElementDesign): boolean =>
  buildUp?.layers.some(holdsHeatIn) ?? false;

/** The worst of an element, and as what. */
export interface Bare {
  readonly as: 'single pane' | 'without insulation' | 'worst usual construction';
  /** [W/(m²K)] */
  readonly transmittance: number;
}

/**
 * The worst that an element can be, ground included: without its insulation, where between members a still air space
 * is left and elsewhere the layers close up; of a window a single pane; of an element without layers, or without
 * insulation among them, what usual constructions come to at most. Never less than as drawn.
 *
 * @param transmittance as drawn [W/(m²K)]
 */
export function withoutInsulation(entry: DesignElement, element: ElementDesign, transmittance: number): Bare {
  const { glazed, buildUp } = element;
  const atLeast = (it: number) => Math.max(it, transmittance);
  if (glazed) return { as: 'single pane', transmittance: atLeast(SINGLE_PANE) };
  const bare =
    buildUp !== null && isInsulated(element)
      ? throughLayers(entry, emptied(buildUp), noCorrections).transmittance
      : null;
  return bare === null
    ? { as: 'worst usual construction', transmittance: atLeast(OPAQUE) }
    : { as: 'without insulation', transmittance: atLeast(bare) };
}

/** The layers without those that insulate. */
const emptied = ({ facing, layers }: BuildUp): BuildUp => ({
  facing,
  layers: layers.flatMap((layer) => (holdsHeatIn(layer) ? leftBy(layer) : [layer])),
});

function leftBy({ name, thickness, bridge }: BuildUpLayer): AirLayer[] {
  if (bridge === null || thickness === null) return [];
  return [{ kind: 'air', name, thickness, ventilation: 'unventilated', opening: null, bridge }];
}
