/** The pieces at work: their slabs, and what each of their faces exchanges with the rooms. */
import type { Films, Surroundings } from './boundary.ts';
import { makeSlab, respond, type Slab } from './conduction.ts';
import { type Face, insideConvection, radiation } from './films.ts';
import type { Piece, ToGround, ToZone } from './model.ts';
import type { Physics } from './physics.ts';

/** A face in a room. */
export interface Side {
  readonly to: ToZone;
  /** [W/(m²K)] */
  convection: number;
  radiation: number;
  /** Sun taken up [W/m²]. */
  sun: number;
}

export interface Part {
  readonly piece: Piece;
  readonly slab: Slab;
  readonly inside: Side;
  readonly beyond: Side | undefined;
  /** At the outer face, when that is not a room's. */
  outsideConductance: number;
  outsideGiven: number;
}

/** Temperatures of the rooms, by zone [°C]. */
export interface Rooms {
  readonly air: Float64Array;
  /** What the faces of a room radiate to. */
  readonly radiant: Float64Array;
  readonly furniture: Float64Array;
}

/** What lies beyond the pieces that are neither against outdoors nor against a room [°C]. */
export interface Beyond {
  ground: number;
  outdoor: number;
  /** The mean of the last week or so outdoors. */
  lateOutdoor: number;
  /** Of each heated neighbour. */
  readonly neighbours: Float64Array;
}

/** ISO 6946:2017 table 7, with the heat going out: up through a ceiling, down through a floor. */
const standardConductance: Record<Face, number> = { wall: 1 / 0.13, ceiling: 1 / 0.1, floor: 1 / 0.17 };

/** @param outer temperature that the outer face starts from, where that is no room's [°C] */
export function makePart(piece: Piece, temperature: number, outer: number): Part {
  const side = (to: ToZone): Side => ({ to, convection: 0, radiation: 0, sun: 0 });
  return {
    piece,
    slab: makeSlab(piece.layers, temperature, isExposed(piece) ? outer : temperature),
    inside: side(piece.inside),
    beyond: piece.outside.kind === 'zone' ? side(piece.outside) : undefined,
    outsideConductance: 0,
    outsideGiven: 0,
  };
}

const isExposed = ({ outside }: Piece) => outside.kind === 'outside' || outside.kind === 'ground';

/** All faces in each zone [m²]. */
export function faceAreas(pieces: readonly Piece[], zones: number): Float64Array {
  const areas = new Float64Array(zones);
  for (const piece of pieces)
    for (const side of [piece.inside, piece.outside])
      if (side.kind === 'zone') areas[side.zone] += piece.area;
  return areas;
}

/** Floor of each zone, as far as pieces have it [m²]. */
export function floorAreas(pieces: readonly Piece[], zones: number): Float64Array {
  const areas = new Float64Array(zones);
  for (const piece of pieces)
    for (const side of [piece.inside, piece.outside])
      if (side.kind === 'zone' && side.face === 'floor') areas[side.zone] += piece.area;
  return areas;
}

/**
 * Sets the films of a part from the last step's temperatures, and how its slab will respond.
 *
 * @param floorSun taken up by the floor of each zone [W/m²]
 */
export function meetSurroundings(
  part: Part,
  rooms: Rooms,
  floorSun: Float64Array,
  around: Surroundings,
  beyondAll: Beyond,
  films: Films,
  physics: Physics,
  step: number,
): void {
  const { slab, piece, inside, beyond } = part;
  setSide(inside, slab.temperature[0], rooms, floorSun, films, physics);
  if (beyond !== undefined) {
    setSide(beyond, slab.temperature[slab.temperature.length - 1], rooms, floorSun, films, physics);
    part.outsideConductance = beyond.convection + beyond.radiation;
    part.outsideGiven = beyond.sun;
  } else if (piece.outside.kind === 'outside') {
    const met = around.face(piece.outside);
    part.outsideConductance = met.conductance;
    part.outsideGiven = met.given;
  } else if (piece.outside.kind === 'ground') {
    part.outsideConductance = 1 / piece.outside.resistance;
    part.outsideGiven = underFloor(piece.outside, beyondAll) / piece.outside.resistance;
  } else if (piece.outside.kind === 'neighbour') {
    part.outsideConductance = 1 / piece.outside.resistance;
    part.outsideGiven = beyondAll.neighbours[piece.outside.neighbour] / piece.outside.resistance;
  }
  const insideConductance = inside.convection + inside.radiation;
  respond(slab, step, insideConductance, part.outsideConductance, part.outsideGiven, beyond !== undefined);
}

function underFloor({ edgeShare = 0, airShare = 0 }: ToGround, { ground, outdoor, lateOutdoor }: Beyond) {
  return ground + edgeShare * (lateOutdoor - ground) + airShare * (outdoor - ground);
}

function setSide(
  side: Side,
  temperature: number,
  rooms: Rooms,
  floorSun: Float64Array,
  films: Films,
  physics: Physics,
) {
  const { zone, face } = side.to;
  side.sun = face === 'floor' ? floorSun[zone] : 0;
  if (films === 'standard') {
    side.convection = standardConductance[face];
    side.radiation = 0;
  } else {
    side.convection =
      physics.insideFactor * insideConvection(face, temperature - rooms.air[zone], physics.insideConvection);
    side.radiation = radiation((temperature + rooms.radiant[zone]) / 2);
  }
}
