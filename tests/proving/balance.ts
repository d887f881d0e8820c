/** The heat balance of all rooms at the end of a step, faces included: one small system of equations. */
import type { Airflow } from './airflow.ts';
import { radiation } from './films.ts';
import { solveBalance } from './linear.ts';
import type { Zone } from './model.ts';
import type { Part, Rooms, Side } from './parts.ts';

/** [J/(m³K)]: the 0.33 Wh/(m³K) that ventilation loss is reckoned with. */
export const airCapacity = 0.33 * 3600;
/** Heat that a zone is given outright [W]. */
export interface Given {
  readonly air: Float64Array;
  readonly radiant: Float64Array;
  readonly furniture: Float64Array;
}

/** @returns sets `rooms` to the temperatures at the end of the step */
export function roomBalance(
  zones: readonly Zone[],
  parts: readonly Part[],
  rooms: Rooms,
  step: number,
  furnitureConvection: number,
) {
  const size = 3 * zones.length; // unknowns of zone z: air 3z, radiant 3z + 1, furniture 3z + 2
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const pull = (row: number, column: number, by: number) => {
    matrix[row * size + column] -= by;
  };
  /** Heat goes to and fro between two unknowns [W/K]. */
  const join = (a: number, b: number, by: number) => {
    pull(a, a, -by);
    pull(a, b, by);
    pull(b, b, -by);
    pull(b, a, by);
  };

  return (given: Given, flow: Airflow, outdoor: number) => {
    matrix.fill(0);
    right.fill(0);
    zones.forEach((zone, z) => {
      addZone(zone, z, given, flow, outdoor);
    });
    for (const part of parts) addPart(part);
    solveBalance(matrix, right);
    for (let z = 0; z < zones.length; z++) {
      rooms.air[z] = right[3 * z];
      rooms.radiant[z] = right[3 * z + 1];
      rooms.furniture[z] = right[3 * z + 2];
    }
  };

  function addZone(zone: Zone, z: number, given: Given, flow: Airflow, outdoor: number) {
    const air = 3 * z;
    const radiant = air + 1;
    const furniture = air + 2;
    const airStep = (zone.volume * airCapacity) / step;
    const furnitureStep = zone.furnitureCapacity / step;
    const open = zone.bridges + airCapacity * flow.fromOutside[z];
    pull(air, air, -(airStep + open));
    pull(furniture, furniture, -furnitureStep);
    right[air] += airStep * rooms.air[z] + open * outdoor + given.air[z];
    right[radiant] += given.radiant[z];
    right[furniture] += furnitureStep * rooms.furniture[z] + given.furniture[z];
    join(air, furniture, zone.furnitureArea * furnitureConvection);
    join(radiant, furniture, zone.furnitureArea * radiation(rooms.radiant[z]));
    for (let other = 0; other < zones.length; other++) {
      const carried = airCapacity * flow.between[other * zones.length + z];
      pull(air, air, -carried);
      pull(air, 3 * other, carried);
    }
  }

  function addPart({ piece, slab, inside, beyond }: Part) {
    const last = slab.base.length - 1;
    for (const [side, node] of [
      [inside, 0],
      [beyond, last],
    ] as const) {
      if (side === undefined) continue;
      for (const [row, conductance] of [
        [3 * side.to.zone, piece.area * side.convection],
        [3 * side.to.zone + 1, piece.area * side.radiation],
      ]) {
        pull(row, row, -conductance);
        right[row] += conductance * (slab.base[node] + slab.byInside[node] * inside.sun);
        answer(row, conductance * slab.byInside[node], inside);
        if (beyond !== undefined) answer(row, conductance * slab.byOutside[node], beyond);
      }
    }
  }

  /** The face's temperature answers to what the air and the other faces beside `side` give. */
  function answer(row: number, by: number, side: Side) {
    pull(row, 3 * side.to.zone, by * side.convection);
    pull(row, 3 * side.to.zone + 1, by * side.radiation);
  }
}
