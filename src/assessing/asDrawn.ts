/** What of the design the readings are held against, and what beside outdoors the house cools towards. */
import type { Neighbour } from '../cooling/index.ts';
import { type Design, statedNeighbour } from '../fabric/index.ts';
import type { StageNote } from '../gap/index.ts';
import { metersHeating } from '../heatloss/index.ts';
import type { House } from '../house.ts';
import { NORMAL_95 } from '../maths/logInterval.ts';
import type { HouseRecord } from '../series/record.ts';

/** A meter of one appliance is no meter of the house's heat. */
export function withoutAppliances(
  record: HouseRecord,
  heatLossAsDrawn: number | null,
): { readonly record: HouseRecord; readonly findings: readonly StageNote[] } {
  const { heatingPower } = record;
  if (heatingPower === null || heatLossAsDrawn === null || metersHeating(record, heatLossAsDrawn))
    return { record, findings: [] };
  const switched = heatingPower.some((power) => power > 0);
  return {
    record: { ...record, heatingPower: null },
    findings: switched ? [{ code: 'meter-not-of-heating', where: { key: 'heat' } }] : [],
  };
}

/**
 * A heated neighbour by its share of all losses as drawn. Null without one, where a wall to it has no transmittance,
 * and where nobody tells how warm it is: then it is as if it were as warm as the house.
 */
export function neighbourOf(house: House, { rooms }: HouseRecord, design: Design | null): Neighbour | null {
  const toOutside = design && drawnLike(house, design);
  const toNeighbours = design?.toNeighbours ?? 0;
  if (toOutside === null || toNeighbours === 0) return null;
  const temperature = statedNeighbour(house)?.temperature ?? null;
  if (temperature === null && !rooms.some(({ place }) => place === 'adjacent')) return null;
  return { weight: toNeighbours / (toNeighbours + toOutside), temperature };
}

/** What the loggers, and a neighbour's temperature as stated, may be off in what drives the fall; one sd [K]. */
export function drivingSd(
  house: House,
  { rooms, differenceSd }: HouseRecord,
  neighbour: Neighbour | null,
): number {
  const stated = statedNeighbour(house);
  if (neighbour === null || stated === null || rooms.some(({ place }) => place === 'adjacent'))
    return differenceSd;
  return Math.hypot(differenceSd, (neighbour.weight * stated.plusMinus) / NORMAL_95);
}

/** What the measured figure is set beside: as tested, unless the vents were open [W/K]; null without either. */
export const drawnLike = ({ conditions }: House, { heatLoss, heatLossAsTested }: Design): number | null =>
  conditions?.ventsClosed === false ? heatLoss : (heatLossAsTested ?? heatLoss);
