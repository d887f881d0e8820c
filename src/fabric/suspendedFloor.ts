/** Floors over a ventilated space on the ground. */
import { floorSurfaces, type GroundAround, groundPath } from './ground.ts';

export interface Underfloor {
  /** Of the floor above the ground outside [m]. */
  readonly height: number;
  /** Of the wall between floor and ground [W/(m²K)]. */
  readonly wallTransmittance: number;
  /** Ventilation openings per perimeter [m² per m]. */
  readonly opening: number;
  /** Mean, 10 m above ground [m/s]. */
  readonly windSpeed: number;
  readonly shelter: keyof typeof windShielding;
  /** Of insulation on the ground [m²K/W]. */
  readonly groundResistance: number;
}

/** fw [–]. ISO 13370:2017, Table 8 (town centre, suburb, open country); MEMORY. */
const windShielding = { sheltered: 0.02, average: 0.05, exposed: 0.1 } as const;

/** Taken where nothing better is known. ISO 13370 and UK conventions; from memory. */
export const usualUnderfloor: Underfloor = {
  height: 0.3,
  wallTransmittance: 1.7,
  opening: 1500e-6,
  windSpeed: 5,
  shelter: 'average',
  groundResistance: 0,
};

export interface SuspendedFloor {
  readonly kind: 'suspended';
  /** Floor, space and ground together [W/(m²K)]. */
  readonly transmittance: number;
  /** B′: area over half the perimeter [m]. */
  readonly characteristicDimension: number;
  /** Uf: of the floor between room and space [W/(m²K)]. */
  readonly floorTransmittance: number;
  /** Ug: through the ground [W/(m²K)]. */
  readonly groundTransmittance: number;
  /** Ux: through the walls of the space and with its air [W/(m²K)]. */
  readonly spaceTransmittance: number;
}

interface Suspended extends GroundAround, Underfloor {
  /** [m²] */
  readonly area: number;
  /** Exposed perimeter [m]. */
  readonly perimeter: number;
  /** Of the floor, with the inside resistance on both faces [W/(m²K)]. */
  readonly floorTransmittance: number;
}

/**
 * Steady transmittance of a suspended floor, its space ventilated from outside.
 *
 * @see ISO 13370:2017, 7.2: 1/U = 1/Uf + 1/(Ug + Ux), Ux = 2·h·Uw/B′ + 1450·ε·v·fw/B′
 */
export function suspendedFloor(floor: Suspended): SuspendedFloor {
  const { area, perimeter, wallThickness, groundConductivity, floorTransmittance } = floor;
  const { inside, outside } = floorSurfaces;
  const B = area / (0.5 * perimeter);
  const dg = wallThickness + groundConductivity * (inside + floor.groundResistance + outside);
  const Ug = groundPath(groundConductivity, B, dg);
  const walls = (2 * floor.height * floor.wallTransmittance) / B;
  const air = (1450 * floor.opening * floor.windSpeed * windShielding[floor.shelter]) / B;
  return {
    kind: 'suspended',
    transmittance: 1 / (1 / floorTransmittance + 1 / (Ug + walls + air)),
    characteristicDimension: B,
    floorTransmittance,
    groundTransmittance: Ug,
    spaceTransmittance: walls + air,
  };
}
