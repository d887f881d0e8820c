export {
  type CoLocation,
  type CoLocationOffset,
  coLocationOffsets,
  type SideBySide,
  steadyHumidity,
  steadyTemperature,
} from './coLocation.ts';
export type { ClockError, Offer, SenseFinding } from './finding.ts';
export type { ReadClock, Readings, SensedLogger, SensedWeather } from './sensed.ts';
export { senseOf } from './senseOf.ts';
