/**
 * The design side: build-ups to the heat loss, heat capacity and time constant of the house as drawn.
 *
 * Tables and clauses of the standards were written down from memory; `tests/outside/` says beside each figure
 * whether it was checked against a text that could be read.
 */

export type { LimitKind } from '../house.ts';
export {
  clearWidth,
  type Fitting,
  fittingOf,
  type JointLoss,
  jointLoss,
  type OpenJoints,
} from './airGaps.ts';
export { type AirSpace, airSpaceResistance } from './airSpaces.ts';
export { junctionDefaults, junctionSource, unknownYValue } from './bridges.ts';
export type { AirLayer, BuildUp, BuildUpLayer, LayerBridge, SolidLayer, StatedLayer } from './buildUp.ts';
export type { Limits, SectionResistance } from './combinedMethod.ts';
export type { Corrections, CorrectionsAsked, Fasteners } from './corrections.ts';
export {
  type DegreeDays,
  degreeDaysOfExtremes,
  degreeDaysOfSeries,
  heatDemand,
  standardYear,
} from './degreeDays.ts';
export { type Design, designOf, timeConstantOf } from './design.ts';
export { type ElementDesign, elementDesign } from './element.ts';
export type { FabricFinding } from './finding.ts';
export { buildUpFrom, correctionsFrom, type Neighbour, statedNeighbour } from './fromHouse.ts';
export { type EdgeInsulation, type SlabOnGround, slabOnGround } from './ground.ts';
export { type PeriodicResponse, periodicResponse } from './heatCapacity.ts';
export { type DesignDay, designHeatLoad, neighbourFlow } from './heatLoad.ts';
export { besideLimit, type LimitTable, limitKindOf, limitTableOf } from './limits.ts';
export { exampleLimits } from './limitsExample.ts';
export { classHeatCapacities, elementClassHeatCapacities } from './massClasses.ts';
export * from './materials/index.ts';
export * from './moisture/index.ts';
export type { DesignRanges } from './ranges.ts';
export type { Spread } from './spread.ts';
export { type StartingPoint, startingPoints } from './startingPoints/index.ts';
export { type Beyond, type Surfaces, surfacesOf } from './surfaces.ts';
export { type SuspendedFloor, suspendedFloor, type Underfloor } from './suspendedFloor.ts';
export { type TemperaturesThrough, temperaturesThrough } from './temperatures.ts';
export { type Framing, proposedExtraFraction, timberConventions } from './timberConventions.ts';
export {
  type LayerWorking,
  type TransmittanceCase,
  type TransmittanceResult,
  transmittanceOf,
  type Workings,
} from './transmittance.ts';
export { airChangesFromPermeability, divisorOf, ventilationLoss } from './ventilation.ts';
