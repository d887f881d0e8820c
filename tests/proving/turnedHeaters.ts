/** Heaters that are turned up and down towards the set temperature. */
import { airCapacity } from './balance.ts';
import type { Model } from './model.ts';
import { faceAreas } from './parts.ts';
import type { Use } from './use.ts';

/**
 * Given how much a room's air lacks [K] (null when nobody wants heat): the power of this step [W]. Proportional and
 * integral, in the form that remembers its last power, so that a heater at its end does not wind up.
 */
export type TurnedHeater = (lacks: number | null) => number;

const filmConductance = 4; // of the faces about a room, what takes up heat within a step [W/(m²K)]

/** By zone, where the use asks for it; null where no heater is turned. */
export function turnedHeaters(model: Model, use: Use, step: number): (TurnedHeater | null)[] | null {
  const { turnedAbove } = use;
  if (turnedAbove === undefined) return null;
  const faces = faceAreas(model.pieces, model.zones.length);
  return model.zones.map(({ volume }, z) => {
    const stiffness = (volume * airCapacity) / step + filmConductance * faces[z];
    const most = use.heatingPower[z];
    return most / stiffness > turnedAbove ? turnedHeater(most, stiffness) : null;
  });
}

function turnedHeater(most: number, stiffness: number): TurnedHeater {
  let power = 0;
  let lacked = 0;
  return (lacks) => {
    if (lacks === null) {
      power = 0;
      lacked = 0;
      return 0;
    }
    const turn = 0.5 * stiffness * (lacks - lacked + 0.25 * lacks);
    power = Math.min(most, Math.max(0, power + turn));
    lacked = lacks;
    return power;
  };
}
