/** Air spaces that the table of air layers does not cover: small or divided ones, and those with a bright face. */
import type { HeatFlow } from '../house.ts';

export interface AirSpace {
  readonly facing: HeatFlow;
  /** Along the flow of heat [m]. */
  readonly thickness: number;
  /** Across it [m]; Infinity for a space much wider than thick. */
  readonly width: number;
  /** Of the brighter face [–]; the other is a usual building material. */
  readonly emissivity: number;
}

/** Of usual building materials [–]. ISO 6946:2017, Annex D; MEMORY. */
export const usualEmissivity = 0.9;
/** Radiative coefficient of black surfaces at 10 °C [W/(m²K)]. ISO 6946:2017, Annex D; MEMORY. */
const blackRadiation = 5.1;
/** Conduction through still air: its conductivity [W/(mK)]. ISO 6946:2017, Annex D; MEMORY. */
const stillAir = 0.025;
/** Convection at temperature differences up to 5 K [W/(m²K)] by thickness [m]. ISO 6946:2017, Annex D; MEMORY. */
const convection: Readonly<Record<HeatFlow, (thickness: number) => number>> = {
  across: () => 1.25,
  up: () => 1.95,
  down: (thickness) => 0.12 * thickness ** -0.44,
};

/**
 * Resistance of an unventilated air space from convection and radiation [m²K/W]. At widths above ten times
 * its thickness, with usual faces, it gives the figures of the table of air layers.
 *
 * @see ISO 6946:2017, Annex D: 1/(ha + ½·E·hr0·(1 + √(1 + d²/b²) - d/b)), E = 1/(1/ε1 + 1/ε2 - 1)
 */
export function airSpaceResistance({ facing, thickness, width, emissivity }: AirSpace): number {
  if (thickness === 0) return 0;
  const ha = Math.max(convection[facing](thickness), stillAir / thickness);
  const E = 1 / (1 / emissivity + 1 / usualEmissivity - 1);
  const slenderness = thickness / width;
  const hr = 0.5 * E * blackRadiation * (1 + Math.sqrt(1 + slenderness ** 2) - slenderness);
  return 1 / (ha + hr);
}
