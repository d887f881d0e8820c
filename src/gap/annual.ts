/** A year's heat and the heater for a cold day: as drawn and as measured, for orientation. */
import type { Estimate } from '../assessment.ts';
import {
  type DegreeDays,
  type Design,
  type DesignDay,
  designHeatLoad,
  heatDemand,
  neighbourFlow,
  statedNeighbour,
} from '../fabric/index.ts';
import type { House } from '../house.ts';
import type { AnnualNote } from './change/notes.ts';
import { climateOf } from './climate.ts';
import { above, below, scaled, sumOf } from './intervals.ts';

/** Weather and occupants are standard; nothing is added for heating up again or for what a boiler loses. */
export interface AnnualFigures {
  /** [J]; null without a heat loss */
  readonly heatDemand: Estimate | null;
  /** [W]; null without a heat loss, or with a wall to a neighbour that has no transmittance */
  readonly heatLoad: Estimate | null;
  readonly degreeDays: DegreeDays;
  readonly day: DesignDay;
  readonly notes: readonly AnnualNote[];
}

/** Of the house as drawn, in use; null where no degree days of the place are known. */
export function designedYear(house: House, design: Design): AnnualFigures | null {
  const climate = climateOf(house);
  if (climate === null) return null;
  const { year, day } = beside(house, climate);
  return {
    heatDemand: design.ranges.heatLoss && demandOf(design.ranges.heatLoss, year),
    heatLoad: designHeatLoad(design, day),
    degreeDays: year,
    day,
    notes: [orientation(year, day), ...neighbourNote(house, design)],
  };
}

export interface Measured {
  /** [W/K]; with the air as it went in the nights */
  readonly heatLoss: Estimate;
  /** Nothing was missing from the house. */
  readonly finished: boolean;
}

/**
 * Of a stage as measured; null where no degree days of the place are known.
 *
 * Nights are measured with the vents shut, a year is lived with them open: what the house as drawn loses more in
 * use than as tested is added, with the design's doubt of both. Without such a pair the air counts as measured.
 */
export function measuredYear(house: House, design: Design | null, measured: Measured): AnnualFigures | null {
  const climate = climateOf(house);
  if (climate === null) return null;
  const { year, day } = beside(house, climate);
  const ventsShut = house.conditions?.ventsClosed !== false;
  const added = design && ventsShut ? airInUse(design) : null;
  const heatLoss = added === null ? measured.heatLoss : sumOf(measured.heatLoss, added);
  const next = design === null ? still : neighbourFlow(design, day);
  const difference = day.insideTemperature - day.outsideTemperature;
  return {
    heatDemand: demandOf(heatLoss, year),
    heatLoad: next && sumOf(scaled(heatLoss, difference), next),
    degreeDays: year,
    day,
    notes: [
      orientation(year, day),
      added === null
        ? { code: 'annual-air-as-measured', ventsShut }
        : {
            code: 'annual-vents-added',
            added: added.value,
            said: house.conditions?.ventsClosed === true,
          },
      ...neighbourNote(house, design),
      ...(measured.finished ? [] : [{ code: 'annual-of-unfinished' } as const]),
    ],
  };
}

function beside(house: House, { year, day }: { readonly year: DegreeDays; readonly day: DesignDay }) {
  const neighbour = statedNeighbour(house);
  return { year, day: neighbour === null ? day : { ...day, neighbour } };
}

const orientation = (
  { degreeDays, baseTemperature: base }: DegreeDays,
  { insideTemperature: inside, outsideTemperature: outside }: DesignDay,
): AnnualNote => ({ code: 'annual-for-orientation', degreeDays, base, inside, outside });

const neighbourNote = (house: House, design: Design | null): AnnualNote[] =>
  (design?.toNeighbours ?? 0) === 0 || statedNeighbour(house) !== null
    ? []
    : [{ code: 'annual-neighbour-as-warm' }];

/** As drawn less as tested [W/K]; null without a figure as tested. The air's doubt as tested is what its whole has beyond the fabric's. */
function airInUse({ heatLoss, heatLossAsTested, ranges }: Design): Estimate | null {
  if (heatLoss === null || heatLossAsTested === null) return null;
  const { ventilation, fabric, bridges, heatLossAsTested: tested } = ranges;
  if (fabric === null || tested === null) return null;
  const own = (side: (it: Estimate) => number) =>
    Math.sqrt(Math.max(0, side(tested) ** 2 - side(fabric) ** 2 - side(bridges) ** 2));
  const value = heatLoss - heatLossAsTested;
  return {
    value,
    low: value - Math.hypot(below(ventilation), own(above)),
    high: value + Math.hypot(above(ventilation), own(below)),
  };
}

const still: Estimate = { value: 0, low: 0, high: 0 };

const demandOf = (heatLoss: Estimate, year: DegreeDays): Estimate => scaled(heatLoss, heatDemand(1, year));
