/** A stage by its own readings: every way to its heat loss but the network. */

import {
  type JudgedNight,
  laterStarts,
  leaveOneNightOut,
  type Neighbour,
  poolTimeConstants,
  roomsCooling,
  type StageNights,
} from '../cooling/index.ts';
import { type Design, designOf } from '../fabric/index.ts';
import { whereToLook } from '../gap/index.ts';
import {
  capacityOverTau,
  heatBalance,
  heatThenCool,
  stateSpace,
  surfaceHints,
  underConditions,
  windowsOf,
} from '../heatloss/index.ts';
import type { House } from '../house.ts';
import { timeAt } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import { drawnLike } from './asDrawn.ts';
import type { StageEvidence } from './evidence.ts';

/** A stage with what its own readings give. */
export type Measured = Pick<
  StageEvidence,
  | 'stage'
  | 'pooled'
  | 'leaveOneOut'
  | 'laterStarts'
  | 'rooms'
  | 'estimates'
  | 'unanswered'
  | 'surfaces'
  | 'whereToLook'
  | 'doubts'
  | 'apart'
>;

export const wholeRecord = ({ grid }: HouseRecord, nights: readonly JudgedNight[]): StageNights => ({
  name: 'Whole record',
  from: grid.start,
  to: timeAt(grid, grid.length - 1),
  complete: true,
  missing: [],
  nights,
  crossing: [],
});

/** What every stage of a record rests on. */
export interface RestsOn {
  readonly house: House;
  readonly record: HouseRecord;
  readonly design: Design | null;
  readonly neighbour: Neighbour | null;
  readonly differenceSd: number;
  /** Of all stages. */
  readonly nights: readonly JudgedNight[];
}

export function measureStage(stage: StageNights, restsOn: RestsOn): Measured {
  const { house, record, design, neighbour, differenceSd } = restsOn;
  const pooled = poolTimeConstants(stage.nights, differenceSd);
  const rooms = roomsCooling(record, stage.nights, neighbour);
  const surfaces = surfaceHints(house, record, design, stage);
  const heatLossAsDrawn = design && drawnLike(house, design);
  return {
    stage,
    pooled,
    leaveOneOut: leaveOneNightOut(stage.nights, pooled),
    laterStarts: laterStarts(record, stage.nights, neighbour),
    rooms,
    doubts: null,
    apart: null,
    surfaces,
    whereToLook: whereToLook({
      house,
      record,
      design,
      heatLossAsDrawn,
      neighbour,
      stage,
      rooms,
      surfaces,
    }),
    ...estimatesOf({ ...restsOn, stage, pooled }),
  };
}

function estimatesOf(
  given: RestsOn & Pick<Measured, 'stage' | 'pooled'>,
): Pick<StageEvidence, 'estimates' | 'unanswered'> {
  const { stage, pooled, record, nights } = given;
  const house = asItStood(given.house, stage);
  const design = house === given.house ? given.design : designOf(house);
  const heatLossAsDrawn = given.design && drawnLike(given.house, given.design);
  const neighbourShare = given.neighbour?.weight ?? 0;
  if (house.conditions?.openToNeighbour) return { estimates: [], unanswered: [] };
  const constantGains = house.constantGainsW ?? 0;
  const heated = stage.nights
    .filter((night) => night.heated && !night.used && !leftOutByHand(night) && !notLogged(night))
    .map(({ night }) => night);
  const { estimate: twoSlopes, unanswered } = heatThenCool(
    { ...record, differenceSd: given.differenceSd },
    heated,
    constantGains,
    given.neighbour,
  );
  const balance = heatBalance({ house, design, record, stage, nights });
  const estimates = [
    balance.estimate,
    stateSpace(record, stage, {
      heatLossAsDrawn,
      heatCapacity: design?.heatCapacity ?? null,
      constantGains,
      neighbour: given.neighbour,
      place: house.location,
      windows: windowsOf(house.elements ?? []),
    }),
    twoSlopes,
    pooled !== null &&
    design !== null &&
    design.heatCapacity !== null &&
    design.heatCapacitySd !== null &&
    neighbourShare < 1
      ? capacityOverTau({
          heatCapacity: design.heatCapacity,
          heatCapacitySd: design.heatCapacitySd,
          timeConstant: pooled.timeConstant.value,
          logSe: pooled.logSe,
          degreesOfFreedom: pooled.degreesOfFreedom,
          constantGains,
          meanDifference: pooled.meanDifference,
          differenceSd: given.differenceSd,
          neighbourShare,
        })
      : null,
  ].filter((estimate) => estimate !== null);
  return {
    estimates: underConditions(estimates, { house, record, design, stage }, heatLossAsDrawn),
    unanswered: [...balance.unanswered, ...unanswered],
  };
}

/** Without the elements that were not there yet: they hold no heat, and no sun shines through them. */
const asItStood = (house: House, { missing }: StageNights): House =>
  missing.length === 0 || house.elements === undefined
    ? house
    : { ...house, elements: house.elements.filter(({ name }) => !missing.includes(name)) };

const notLogged = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'no-inside-readings');

const leftOutByHand = ({ reasons }: JudgedNight) => reasons.some(({ code }) => code === 'left-out-by-hand');
