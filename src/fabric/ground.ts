/** Floors on the ground. */

export interface Slab {
  /** [m²] */
  readonly area: number;
  /** Exposed perimeter [m]. */
  readonly perimeter: number;
  /** Of the floor's layers, without surfaces [m²K/W]. */
  readonly resistance: number;
  /** Of the walls around it [m]. */
  readonly wallThickness: number;
  /** [W/(mK)] */
  readonly groundConductivity: number;
}

export interface SlabOnGround {
  /** [W/(m²K)] */
  readonly transmittance: number;
  /** B′: area over half the perimeter [m]. */
  readonly characteristicDimension: number;
  /** dt: the ground that would resist as much as floor and wall [m]. */
  readonly equivalentThickness: number;
  /** Whether the formula for well insulated floors was the one to use. */
  readonly wellInsulated: boolean;
}

/** Taken where nothing better is known: a 300 mm wall on clay or silt. ISO 13370:2017. */
export const assumedGround = { wallThickness: 0.3, groundConductivity: 1.5 } as const;

/** [m²K/W], heat flowing down; ISO 6946:2017, Table 7. */
const surfaces = 0.17 + 0.04;

/**
 * Steady transmittance of a slab on ground, without edge insulation.
 *
 * @see ISO 13370:2017, clause 7
 */
export function slabOnGround(slab: Slab): SlabOnGround {
  const { area, perimeter, resistance, wallThickness, groundConductivity: conductivity } = slab;
  const B = area / (0.5 * perimeter);
  const dt = wallThickness + conductivity * (resistance + surfaces);
  const wellInsulated = dt >= B;
  const transmittance = wellInsulated
    ? conductivity / (0.457 * B + dt)
    : ((2 * conductivity) / (Math.PI * B + dt)) * Math.log((Math.PI * B) / dt + 1);
  return { transmittance, characteristicDimension: B, equivalentThickness: dt, wellInsulated };
}
