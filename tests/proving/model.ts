/** The house as physics sees it: zones of air and the pieces of shell and inner structure between them. */
import type { SlabLayer } from './conduction.ts';
import type { Face } from './films.ts';
import type { RoomMoisture } from './humidity.ts';

/** Air changes per hour at rest, and more per m/s of wind at 10 m over open land. */
export interface Vents {
  readonly steady: number;
  readonly wind: number;
}

export interface Zone {
  readonly name: string;
  /** [m³] */
  readonly volume: number;
  /** Loose things that warm and cool with the room: [J/K] and face [m²]. */
  readonly furnitureCapacity: number;
  readonly furnitureArea: number;
  /** Thermal bridges straight to the outside [W/K]. */
  readonly bridges: number;
  /** The share of the leakage that enters from outside here. */
  readonly inletShare: number;
  /** The share of this zone's outgoing air that goes on to another zone, which must stand later. */
  readonly passesTo: readonly { readonly zone: number; readonly share: number }[];
  /** Air from outside besides, as in a vented roof void. */
  readonly vents: Vents;
  readonly moisture: RoomMoisture;
}

export interface ToZone {
  readonly kind: 'zone';
  readonly zone: number;
  readonly face: Face;
}

export interface ToOutside {
  readonly kind: 'outside';
  /** From north, clockwise [degrees]. */
  readonly bearing: number;
  readonly tilt: number;
  /** The share of the sun's radiation that the face takes up. */
  readonly absorptance: number;
}

/** Beneath the layers of soil lies this resistance, then the ground's temperature [m²K/W]. */
export interface ToGround {
  readonly kind: 'ground';
  readonly resistance: number;
  /** How much of what lies there follows the last week outdoors, as along the edge of a slab; none when left out. */
  readonly edgeShare?: number;
  /** How much follows the outdoor air at once, as in a vented space under a floor; none when left out. */
  readonly airShare?: number;
}

/** A heated neighbour, its air behind the face's film [m²K/W]. */
export interface ToNeighbour {
  readonly kind: 'neighbour';
  /** Its place among the scenario's neighbours. */
  readonly neighbour: number;
  readonly resistance: number;
}

export interface Piece {
  readonly name: string;
  /** [m²] */
  readonly area: number;
  /** From inside to outside. */
  readonly layers: readonly SlabLayer[];
  readonly inside: ToZone;
  readonly outside: ToZone | ToOutside | ToGround | ToNeighbour;
  /** For a window: the sun it lets in of what falls on its whole area, straight on. */
  readonly solarShare: number;
}

/** Air going to and fro between two zones: steadily, and the more the warmer the lower one is. */
export interface Exchange {
  readonly lower: number;
  readonly upper: number;
  /** [m³/s] */
  readonly steady: number;
  /** [m³/s per root of K] */
  readonly buoyant: number;
}

export interface Model {
  readonly zones: readonly Zone[];
  /** The zones that the leakage is reckoned for; the rest is roof void. */
  readonly heatedZones: readonly number[];
  readonly pieces: readonly Piece[];
  readonly exchanges: readonly Exchange[];
  /** Wind at the house of that at 10 m over open land. */
  readonly shelter: number;
  /** What trees and other houses leave of the sky's cold. */
  readonly openSky: number;
}
