/**
 * The design side: build-ups to the heat loss, heat capacity and time constant of the house as drawn.
 *
 * Tables and clauses of the standards were written down from memory; `tests/outside/` says beside each figure
 * whether it was checked against a text that could be read.
 */

export type { AirLayer, BuildUp, BuildUpLayer, LayerBridge, SolidLayer, StatedLayer } from './buildUp.ts';
export type { Corrections, CorrectionsAsked, Fasteners } from './corrections.ts';
export { type Design, designOf } from './design.ts';
export type { ElementDesign } from './element.ts';
export type { FabricFinding } from './finding.ts';
export { buildUpFrom } from './fromHouse.ts';
export { type SlabOnGround, slabOnGround } from './ground.ts';
export { type PeriodicResponse, periodicResponse } from './heatCapacity.ts';
export { type Beyond, type Surfaces, surfacesOf } from './surfaces.ts';
export { type TransmittanceCase, type TransmittanceResult, transmittanceOf } from './transmittance.ts';
export { airChangesFromPermeability, ventilationLoss } from './ventilation.ts';
