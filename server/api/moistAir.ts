/** The air around each logger of temperature and humidity, offsets and all that is left out taken into account. */
import { excessOver, type MoistSeries, moistSeries } from '../../src/air/index.ts';
import type { House, Logger, WeatherFile } from '../../src/house.ts';
import type { LogChannel } from '../../src/logs/index.ts';
import { join } from '../../src/record/join.ts';
import { LOGGER_SD, type LoggerReadings } from '../../src/record/loggers.ts';
import { centred, trusted, usedReadings } from '../../src/record/readings.ts';
import { withoutOffsets } from '../../src/record/sideBySide.ts';
import { longestStepOf } from '../../src/series/steps.ts';
import { instantOf } from '../../src/sky/zone.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { nextTurn } from './keptForLast.ts';
import { storedSeries } from './storedSeries.ts';

export interface LoggerAir {
  readonly file: string;
  readonly room: string | null;
  readonly place: Logger['place'] | 'weather';
  readonly air: MoistSeries;
  /** Vapour over that outside [kg/m³]; null for what is not inside, and where nothing was logged outside. */
  readonly excess: Float64Array | null;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A house with its channels as they are stored. */
export interface MoistHouse {
  readonly house: House;
  readonly channels: readonly StoredChannel[];
  readonly reading: Reading;
}

/**
 * The air of a span of instants [s], and of the nearest days beside it: a line may begin there. One logger is gone
 * through at a time, so that other requests come in between.
 */
export async function moistAirOf(it: MoistHouse, span: Span): Promise<LoggerAir[]> {
  const airs = [...(await loggersAir(it, span)), ...weatherAir(it, span)];
  const outside = airs.find(({ file }) => file === outsideFileOf(it))?.air;
  const longest = outside === undefined ? 0 : longestStepOf(outside.time);
  return airs.map((own) => ({
    ...own,
    excess: own.place === 'inside' && outside !== undefined ? excessOver(own.air, outside, longest) : null,
  }));
}

/** The file that stands for the air outside: of a logger there, else of the weather; null without one. */
export function outsideFileOf({ house, channels }: MoistHouse): string | null {
  const there = [...house.loggers.filter(({ place }) => place === 'outside'), ...(house.weather ?? [])];
  const moist = there.find((entry) =>
    (['temperature', 'humidity'] as const).every((quantity) => storedOf(entry, quantity, channels) !== null),
  );
  return moist?.file ?? null;
}

type Air = Omit<LoggerAir, 'excess'>;

async function loggersAir({ house, channels, reading }: MoistHouse, span: Span): Promise<Air[]> {
  const spell = spellOf(house);
  const loggers: LoggerReadings[] = [];
  for (const logger of house.loggers) {
    const series = (quantity: 'temperature' | 'humidity') => {
      const stored = storedOf(logger, quantity, channels);
      if (stored === null) return null;
      const asked = storedSeries(reading, stored, span);
      const whole = spell === null ? asked : join(storedSeries(reading, stored, spell), asked).channel;
      const used = usedReadings(whole, logger, house, []);
      return used.time.length === 0 ? null : centred(used, logger);
    };
    const temperature = series('temperature');
    if (temperature !== null)
      loggers.push({ logger, temperature, humidity: series('humidity'), temperatureSd: LOGGER_SD });
    await nextTurn();
  }
  const airs: Air[] = [];
  // Loggers without humidity stay among them until here: what each is off is told by all of them together.
  for (const { logger, temperature, humidity } of withoutOffsets(loggers, house, [])) {
    const { file, room = null, place } = logger;
    for (const air of airOf(temperature, humidity)) airs.push({ file, room, place, air });
    await nextTurn();
  }
  return airs;
}

/** When all loggers lay side by side, which tells what each is off at any other time. */
const spellOf = ({ coLocation: it, location }: House): Span | null =>
  it === undefined
    ? null
    : { from: instantOf(it.from, location.timeZone), to: instantOf(it.to, location.timeZone) };

const weatherAir = ({ house, channels, reading }: MoistHouse, span: Span): Air[] =>
  (house.weather ?? []).flatMap((entry) => {
    const series = (quantity: 'temperature' | 'humidity') => {
      const stored = storedOf(entry, quantity, channels);
      return stored && centred(trusted(storedSeries(reading, stored, span)), entry);
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
  { file, columns }: Pick<Logger | WeatherFile, 'file' | 'columns'>,
  quantity: 'temperature' | 'humidity',
  channels: readonly StoredChannel[],
): StoredChannel | null {
  const own = channels.filter((it) => it.file === file && it.quantity === quantity);
  return own.find(({ column }) => column === columns?.[quantity]) ?? own[0] ?? null;
}
