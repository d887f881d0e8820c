/** All stages through the design’s network at once. */

import type { Neighbour } from '../cooling/index.ts';
import type { Design } from '../fabric/index.ts';
import { type NetworkResult, type NetworkStageResult, networkEstimates } from '../heatloss/index.ts';
import type { House } from '../house.ts';
import type { HouseRecord } from '../series/record.ts';
import { drawnLike } from './asDrawn.ts';
import type { Measured } from './measured.ts';

/**
 * The design's network fitted to all stages at once. Null without a design that has a heat loss, where stages
 * overlap, and where a door stands open to the house next door: what goes through it is nobody's transmittance.
 */
export function throughNetwork(
  house: House,
  record: HouseRecord,
  design: Design | null,
  neighbour: Neighbour | null,
  measured: readonly Measured[],
  onRound: (done: number, of: number) => void,
): NetworkResult | null {
  const heatLossAsDrawn = design && drawnLike(house, design);
  const overlapping = measured.slice(1).some(({ stage }, i) => stage.from < measured[i].stage.to);
  if (design === null || heatLossAsDrawn === null || overlapping || house.conditions?.openToNeighbour)
    return null;
  const stages = measured.map(({ stage }) => stage);
  return networkEstimates({ house, design, record, stages, neighbour, heatLossAsDrawn, onRound });
}

export const withNetwork = (own: Measured, network: NetworkStageResult | null): Measured =>
  network === null
    ? own
    : {
        ...own,
        estimates: [...network.estimates, ...own.estimates],
        doubts: network.doubts,
        apart: network.apart,
      };
