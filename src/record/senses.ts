/** What the loggers of a house show when they are seen together and beside the sun. */
import type { House, WeatherFile } from '../house.ts';
import type { LogChannel } from '../logs/index.ts';
import { type Readings, type SensedLogger, type SenseFinding, senseOf } from '../sense/index.ts';
import type { Lay } from '../series/laying.ts';
import type { LoggerReadings } from './loggers.ts';

/** A weather file with those of its channels that the senses look at, each value at the middle of its interval. */
export interface WeatherReadings {
  readonly entry: WeatherFile;
  readonly temperature: LogChannel | null;
  readonly irradiance: LogChannel | null;
}

export function sensesOf(
  { location }: House,
  loggers: readonly LoggerReadings[],
  weather: readonly WeatherReadings[],
  lay: Lay,
): SenseFinding[] {
  const isShared = (file: string) => loggers.filter(({ logger }) => logger.file === file).length > 1;
  const sensed = loggers.map(
    ({ logger, temperature, humidity }): SensedLogger => ({
      file: logger.file,
      ...(isShared(logger.file) && { column: temperature.column }),
      ...readAs(logger),
      place: logger.place,
      temperature: readings(temperature),
      ...(humidity && { relativeHumidity: readings(humidity) }),
    }),
  );
  const station = weather.find(({ temperature, irradiance }) => temperature !== null || irradiance !== null);
  return senseOf(
    sensed,
    station
      ? {
          file: station.entry.file,
          ...readAs(station.entry),
          ...(station.temperature && { temperature: readings(station.temperature) }),
          ...(station.irradiance && { irradiance: readings(station.irradiance) }),
        }
      : null,
    location,
    lay,
  );
}

const readAs = ({ timeZone, clockOffsetMin }: Pick<WeatherFile, 'timeZone' | 'clockOffsetMin'>) => ({
  ...(timeZone !== undefined && { timeZone }),
  ...(clockOffsetMin !== undefined && { clockOffset: clockOffsetMin * 60 }),
});

const readings = ({ time, value }: LogChannel): Readings => ({ time, value });
