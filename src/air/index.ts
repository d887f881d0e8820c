/** Moist air: what it holds, what it carries, what a surface makes of it. */
export {
  absoluteHumidity,
  airDensity,
  airPressureAt,
  humidityRatio,
  pressureOfHumidity,
  seaLevelPressure,
} from './contents.ts';
export { type HumidityClass, type MoistureExcess, moistureExcess } from './humidityClass.ts';
export { excessOver, type MoistSeries, moistSeries, type Readings } from './moistSeries.ts';
export { saturationPressure, saturationTemperature } from './saturation.ts';
export {
  coldestSurface,
  mouldHumidity,
  type Sides,
  surfaceTemperature,
  temperatureFactor,
  temperatureFactorOfPlane,
} from './surface.ts';
export { dewPoint, relativeHumidity, vapourPressure } from './vapour.ts';
