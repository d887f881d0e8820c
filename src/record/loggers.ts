/** The loggers of a house with their readings as they are used. */
import type { House, Logger } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import type { RecordFinding } from './finding.ts';
import { centred, channelOf, exportsOf, usedReadings } from './readings.ts';
import type { Shelf } from './shelf.ts';

export interface LoggerReadings {
  readonly logger: Logger;
  /** [°C] */
  readonly temperature: LogChannel;
  /** [–, 0 to 1] */
  readonly humidity: LogChannel | null;
  /** Standard deviation of what the thermometer is off throughout [K]. */
  readonly temperatureSd: number;
}

/** Generic loggers are sold as good to 0.3 to 0.5 K, rarely better (PRACTICE): as a standard deviation [K]. */
export const LOGGER_SD = 0.2;

/** Those that have a temperature; of the others it is said what is missing. */
export function loggersOf(
  house: House,
  shelf: Shelf,
  findings: (RecordFinding | LogFinding)[],
): LoggerReadings[] {
  return house.loggers.flatMap((logger, i) => {
    const exports = exportsOf(logger, shelf);
    const where = { file: logger.file, key: `loggers[${i}]` };
    const channel = channelOf(exports, 'temperature', logger, findings);
    if (channel === null) {
      if (exports.length > 0) findings.push({ code: 'no-temperature-in-file', where: { file: logger.file } });
      return [];
    }
    const temperature = centred(usedReadings(channel, logger, house, findings), logger);
    if (temperature.time.length < 2) {
      findings.push({ code: 'logger-too-short', where });
      return [];
    }
    const moist = channelOf(exports, 'humidity', logger, findings);
    const humidity = moist && centred(usedReadings(moist, logger, house, []), logger);
    return [{ logger, temperature, humidity, temperatureSd: LOGGER_SD }];
  });
}
