/** Moisture in a build-up by ISO 13788: what condenses where in each month, and whether it dries. */
export { type Climate, exampleClimates, type InsideAir, type MonthOfAir, monthsOfAir } from './climate.ts';
export type { MoistureFinding } from './finding.ts';
export { type MoistureResult, moistureOf, moistureYear } from './moisture.ts';
export type { MoistureMonth } from './month.ts';
export type { Plane } from './planes.ts';
export type { MoistureYear } from './verdict.ts';
