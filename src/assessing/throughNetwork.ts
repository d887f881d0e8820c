/** All stages through the design’s network at once. */

import type { Design } from '../fabric/index.ts';
import type { NetworkStageResult, ToForetell } from '../heatloss/index.ts';
import type { House } from '../house.ts';
import type { HouseRecord } from '../series/record.ts';
import { drawnLike } from './asDrawn.ts';
import type { Measured } from './measured.ts';

/**
 * What the design's network is made of and held against. Null without a design that has a heat loss, where stages
 * overlap, and where a door stands open to the house next door: what goes through it is nobody's transmittance.
 */
export function networkOfDesign(
  house: House,
  record: HouseRecord,
  design: Design | null,
  measured: readonly Measured[],
): ToForetell | null {
  const heatLossAsDrawn = design && drawnLike(house, design);
  const overlapping = measured.slice(1).some(({ stage }, i) => stage.from < measured[i].stage.to);
  if (design === null || heatLossAsDrawn === null || overlapping || house.conditions?.openToNeighbour)
    return null;
  return { house, design, record, stages: measured.map(({ stage }) => stage), heatLossAsDrawn };
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
