/** How a room should cool beside the house by the elements that are its own. */
import { sum } from 'simple-statistics';
import type { Estimate } from '../../assessment.ts';
import type { Neighbour } from '../../cooling/index.ts';
import type { Design, ElementDesign } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';

/** On the logarithm of the room's time constant over the house's [–]. */
export interface Predicted {
  readonly mean: number;
  readonly sd: number;
}

/** Of the elements' heat loss that must be named to rooms. PRACTICE. */
const LEAST_NAMED = 0.8;
/**
 * Elements and mass of one room stray from what is drawn otherwise than the next room's; sd of the logarithm.
 * PRACTICE: with the middle below as the mean, 0.128 in all remained between simulated houses and this prediction.
 */
const STRAYS = 0.12;

/**
 * A room shut off from the rest would have the time constant of its own capacity over its own losses; one whose air is
 * that of the house has the house's. Rooms lie between the two, nobody knows where: their middle is the mean, and the
 * whole way between them is allowed for. Null where elements name no rooms or too few, or rooms have no volumes.
 *
 * @param heatLossAsDrawn of the house, in the state in which it was measured [W/K]
 */
export function predictedRoom(
  house: House,
  design: Design | null,
  heatLossAsDrawn: number | null,
  neighbour: Neighbour | null,
  room: string,
): Predicted | null {
  const share = volumeShare(house, room);
  if (design === null || heatLossAsDrawn === null || share === null) return null;
  if (design.heatCapacity === null || design.fabric === null || design.toNeighbours === null) return null;
  const roomOf = new Map(house.elements?.map((it) => [it.name, it.room]));
  const named = design.elements.filter(({ name }) => roomOf.get(name) !== undefined);
  const own = named.filter(({ name }) => roomOf.get(name) === room);
  const toNext = neighbour === null ? 0 : 1; // without its temperature it is as if it were as warm as the house
  const loses = (it: ElementDesign) => (it.heatLoss ?? 0) + toNext * (it.toNeighbour ?? 0);
  const all = heatLossAsDrawn + toNext * design.toNeighbours;
  const fabric = sum(design.elements.map(loses));
  if (own.length === 0 || sum(named.map(loses)) < LEAST_NAMED * fabric) return null;

  const shared = (whole: number, told: (it: ElementDesign) => number) =>
    sum(own.map(told)) + share * Math.max(0, whole - sum(named.map(told)));
  const stored = sum(named.map(stores));
  const capacity = shared(design.heatCapacity, stores) / Math.max(design.heatCapacity, stored);
  const loss = shared(all, loses) / all;
  if (!(capacity > 0 && loss > 0)) return null;
  const shutOff = Math.log(capacity / loss);
  return { mean: shutOff / 2, sd: Math.hypot(STRAYS, shutOff / Math.sqrt(12)) };
}

/** The 95 % of a prediction, as a ratio. */
export const ratioOf = ({ mean, sd }: Predicted): Estimate => ({
  value: Math.exp(mean),
  low: Math.exp(mean - NORMAL_95 * sd),
  high: Math.exp(mean + NORMAL_95 * sd),
});

const stores = ({ periodic, area }: ElementDesign) => (periodic?.insideHeatCapacity ?? 0) * area;

/** Of the house's volume; null where either is not stated. */
function volumeShare({ loggers, volumeM3 }: House, room: string): number | null {
  const own = loggers.filter((it) => it.place === 'inside' && (it.room ?? it.file) === room);
  const stated = own.flatMap((it) => it.volumeM3 ?? []);
  if (volumeM3 === undefined || stated.length < own.length || own.length === 0) return null;
  return Math.min(1, sum(stated) / volumeM3);
}
