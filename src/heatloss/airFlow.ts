/** How much air a house exchanges, as drawn. */
import type { Design } from '../fabric/index.ts';
import { ventilationLoss, ventilationOf } from '../fabric/ventilation.ts';
import type { House } from '../house.ts';

export interface AirFlow {
  /** [m³/s] */
  readonly flow: number;
  /** No air change was stated: it is an ordinary one. */
  readonly assumed: boolean;
}

/** Air changes per hour where the design states none. PRACTICE: an ordinary shell with its vents shut. */
export const USUAL_AIR_CHANGES = 0.3;
export const STOREY = 2.5; // [m]

/**
 * Of a house with its vents as they were: as tested where that is stated and they were shut. Heat recovery gives back
 * heat and no water, so it does not count. Null where the volume of the house is not known.
 */
export function airFlowOf(house: House, design: Design | null): AirFlow | null {
  const volume = house.volumeM3 ?? (house.floorAreaM2 ?? 0) * STOREY;
  if (!(volume > 0)) return null;
  const { ventilation, conditions } = house;
  const exchanged = ventilationOf(
    ventilation === undefined ? house : { ...house, ventilation: { ...ventilation, heatRecovery: 0 } },
    design?.exposedArea ?? 0,
  );
  const tested = conditions?.ventsClosed === false ? null : exchanged.asTested;
  const stated = (tested ?? exchanged.asDrawn).value / ventilationLoss(1, 1);
  const assumed = !(stated > 0);
  return { flow: (assumed ? USUAL_AIR_CHANGES * volume : stated) / 3600, assumed };
}
