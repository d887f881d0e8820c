/** The air around each logger of temperature and humidity, offsets and all that is left out taken into account. */
import { excessOver, type MoistSeries, moistSeries } from '../../src/air/index.ts';
import type { House, Logger } from '../../src/house.ts';
import type { LogChannel } from '../../src/logs/index.ts';
import { LOGGER_SD, type LoggerReadings } from '../../src/record/loggers.ts';
import { centred, trusted, usedReadings } from '../../src/record/readings.ts';
import { withoutOffsets } from '../../src/record/sideBySide.ts';
import { longestStepOf } from '../../src/series/steps.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { storedSeries } from './storedSeries.ts';

export interface LoggerAir {
  readonly file: string;
  readonly room: string | null;
  readonly place: Logger['place'] | 'weather';
  readonly air: MoistSeries;
  /** Vapour over that outside [kg/m³]; null for what is not inside, and where nothing was logged outside. */
  readonly excess: Float64Array | null;
}

/** The outside comes from a logger there, else from the weather. */
export function moistAirOf(house: House, id: string, reading: Reading): LoggerAir[] {
  const channels = reading.channels(id);
  const airs = [...loggersAir(house, channels, reading), ...weatherAir(house, channels, reading)];
  const outside = outsideOf(airs)?.air;
  return airs.map((it) => ({
    ...it,
    excess:
      it.place === 'inside' && outside !== undefined
        ? excessOver(it.air, outside, longestStepOf(outside.time))
        : null,
  }));
}

export const outsideOf = <A extends Pick<LoggerAir, 'place'>>(airs: readonly A[]): A | undefined =>
  airs.find(({ place }) => place === 'outside') ?? airs.find(({ place }) => place === 'weather');

type Air = Omit<LoggerAir, 'excess'>;

function loggersAir(house: House, channels: readonly StoredChannel[], reading: Reading): Air[] {
  const loggers = house.loggers.flatMap((logger): LoggerReadings[] => {
    const series = (quantity: 'temperature' | 'humidity') => {
      const stored = storedOf(logger, quantity, channels);
      if (stored === null) return null;
      const used = usedReadings(storedSeries(reading, stored), logger, house, []);
      return used.time.length === 0 ? null : centred(used, logger);
    };
    const temperature = series('temperature');
    if (temperature === null) return [];
    return [{ logger, temperature, humidity: series('humidity'), temperatureSd: LOGGER_SD }];
  });
  // Loggers without humidity stay among them until here: what each is off is told by all of them together.
  return withoutOffsets(loggers, house, []).flatMap(({ logger, temperature, humidity }) => {
    const { file, room = null, place } = logger;
    return airOf(temperature, humidity).map((air) => ({ file, room, place, air }));
  });
}

const weatherAir = (house: House, channels: readonly StoredChannel[], reading: Reading): Air[] =>
  (house.weather ?? []).flatMap((entry) => {
    const series = (quantity: 'temperature' | 'humidity') => {
      const stored = storedOf(entry, quantity, channels);
      return stored && centred(trusted(storedSeries(reading, stored)), entry);
    };
    const temperature = series('temperature');
    const airs = temperature === null ? [] : airOf(temperature, series('humidity'));
    return airs.map((air) => ({ file: entry.file, room: null, place: 'weather' as const, air }));
  });

function airOf(temperature: LogChannel, humidity: LogChannel | null): MoistSeries[] {
  if (humidity === null) return [];
  const air = moistSeries(temperature, humidity, longestStepOf(temperature.time));
  return air.time.length === 0 ? [] : [air];
}

/** The column that the house names, else the first of its quantity. */
function storedOf(
  { file, columns }: Pick<Logger, 'file' | 'columns'>,
  quantity: 'temperature' | 'humidity',
  channels: readonly StoredChannel[],
): StoredChannel | null {
  const own = channels.filter((it) => it.file === file && it.quantity === quantity);
  return own.find(({ column }) => column === columns?.[quantity]) ?? own[0] ?? null;
}
