/** Slabs on the ground. */

export interface GroundAround {
  /** Of the walls around the floor [m]. */
  readonly wallThickness: number;
  /** [W/(mK)] */
  readonly groundConductivity: number;
}

/** Insulation along the edge of a slab: flat beside or under it, or upright at its outer face. */
export interface EdgeInsulation {
  readonly lies: 'flat' | 'upright';
  /** From the edge inward, or below ground [m]. */
  readonly reach: number;
  /** [m] */
  readonly thickness: number;
  /** [W/(mK)] */
  readonly conductivity: number;
}

export interface Slab extends GroundAround {
  /** [m²] */
  readonly area: number;
  /** Exposed perimeter [m]. */
  readonly perimeter: number;
  /** Of the floor's layers, without surfaces [m²K/W]. */
  readonly resistance: number;
  readonly edge?: EdgeInsulation | null;
}

export interface SlabOnGround {
  readonly kind: 'slab';
  /** Edge insulation included [W/(m²K)]. */
  readonly transmittance: number;
  /** B′: area over half the perimeter [m]. */
  readonly characteristicDimension: number;
  /** dt: the ground that would resist as much as floor and wall [m]. */
  readonly equivalentThickness: number;
  /** Whether the formula for well insulated floors was the one to use. */
  readonly wellInsulated: boolean;
  /** ψg,ed: what edge insulation takes away along the perimeter [W/(mK)], at most 0. */
  readonly edgeTransmittance: number;
}

/** [W/(mK)]. ISO 13370:2017, Table 7; MEMORY. */
export const groundConductivities = { clay: 1.5, sand: 2, rock: 3.5 } as const;
/** Taken where nothing better is known: a 300 mm wall on clay or silt. ISO 13370:2017; MEMORY. */
export const usualSoil = 'clay';
/** [m] */
export const usualWall = 0.3;

/** [m²K/W], heat flowing down; ISO 6946:2017, Table 7; MEMORY. */
export const floorSurfaces = { inside: 0.17, outside: 0.04 } as const;

/**
 * Steady transmittance of a slab on ground.
 *
 * @see ISO 13370:2017, 7.1 (slab) and Annex D (edge insulation; Annex B of 2007)
 */
export function slabOnGround(slab: Slab): SlabOnGround {
  const { area, perimeter, resistance, wallThickness, groundConductivity, edge } = slab;
  const { inside, outside } = floorSurfaces;
  const B = area / (0.5 * perimeter);
  const dt = wallThickness + groundConductivity * (inside + resistance + outside);
  const wellInsulated = dt >= B;
  const all = evenSlab(groundConductivity, B, dt);
  const additional = edge ? additionalOf(edge, groundConductivity) : 0;
  // A strip does no more than if it lay under the whole floor; on narrow floors the formula has it do so.
  const mostTaken = (evenSlab(groundConductivity, B, dt + additional) - all) * (B / 2);
  const edgeTransmittance = edge ? Math.max(mostTaken, edgeOf(edge, dt, additional, groundConductivity)) : 0;
  return {
    kind: 'slab',
    transmittance: all + (2 * edgeTransmittance) / B,
    characteristicDimension: B,
    equivalentThickness: dt,
    wellInsulated,
    edgeTransmittance,
  };
}

const evenSlab = (ground: number, B: number, dt: number): number =>
  dt >= B ? ground / (0.457 * B + dt) : groundPath(ground, B, dt);

/** Through the ground under a floor [W/(m²K)]: 2λ/(πB′ + d)·ln(πB′/d + 1). ISO 13370:2017, 7.1. */
export const groundPath = (conductivity: number, B: number, d: number): number =>
  ((2 * conductivity) / (Math.PI * B + d)) * Math.log((Math.PI * B) / d + 1);

/** d′ = λ·(Rn - dn/λ): the insulation beyond the ground that it takes the place of [m of ground]. */
const additionalOf = ({ thickness, conductivity }: EdgeInsulation, ground: number): number =>
  Math.max(0, ground * (thickness / conductivity) - thickness);

/** ψ = -λ/π·(ln(D/dt + 1) - ln(D/(dt + d′) + 1)), with 2D for D when upright. */
function edgeOf({ lies, reach }: EdgeInsulation, dt: number, additional: number, ground: number): number {
  const D = lies === 'upright' ? 2 * reach : reach;
  return (-ground / Math.PI) * (Math.log(D / dt + 1) - Math.log(D / (dt + additional) + 1));
}
