/** The spell in which all loggers lay side by side: it tells what each is off, and is no reading of its place. */
import type { Where } from '../assessment.ts';
import type { House } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import {
  type CoLocation,
  type CoLocationOffset,
  coLocationOffsets,
  type SideBySide,
  steadyHumidity,
} from '../sense/index.ts';
import { instantOf } from '../sky/zone.ts';
import type { RecordFinding } from './finding.ts';
import type { LoggerReadings } from './loggers.ts';
import { onlyThose } from './readings.ts';

/** The readings with each logger's offset taken off, those of the spell itself gone. */
export function withoutOffsets(
  loggers: readonly LoggerReadings[],
  { coLocation, location }: House,
  findings: (RecordFinding | LogFinding)[],
): LoggerReadings[] {
  if (coLocation === undefined) return [...loggers];
  const [from, to] = [coLocation.from, coLocation.to].map((at) => instantOf(at, location.timeZone));
  const span = { from, to };
  const warm = believed(
    coLocationOffsets(
      loggers.map(({ logger, temperature }) => sideBySide(logger.file, temperature)),
      span,
    ),
    MOST_KELVINS,
  );
  const moist = believed(
    coLocationOffsets(
      loggers.flatMap(({ logger, humidity }) =>
        humidity === null ? [] : [sideBySide(logger.file, humidity)],
      ),
      span,
      steadyHumidity,
    ),
    MOST_HUMIDITY,
  );
  findings.push(...told(warm));
  const placed = loggers.map((it): LoggerReadings => {
    const own = offsetIn(warm, it.logger.file, it.temperature);
    const wet = it.humidity && offsetIn(moist, it.logger.file, it.humidity);
    return {
      ...it,
      temperature: outsideSpell(moved(it.temperature, own?.offset ?? 0), span),
      humidity: it.humidity && outsideSpell(moved(it.humidity, wet?.offset ?? 0), span),
      temperatureSd: own?.standardError ?? it.temperatureSd,
    };
  });
  return placed.filter(({ logger, temperature }) => {
    if (temperature.time.length > 1) return true;
    findings.push({ code: 'logger-too-short', where: { file: logger.file, key: 'coLocation' } });
    return false;
  });
}

/** No two working loggers side by side differ by more [K and –] (PRACTICE: they are sold as good to half of it). */
const MOST_KELVINS = 1.5;
const MOST_HUMIDITY = 0.1;

type Believed = CoLocation | { readonly kind: 'apart'; readonly offset: CoLocationOffset };

/** Offsets beyond what loggers differ by say that the times are wrong, not the loggers. */
function believed(result: CoLocation, most: number): Believed {
  if (result.kind !== 'offsets') return result;
  const offset = result.offsets.toSorted((a, b) => Math.abs(b.offset) - Math.abs(a.offset))[0];
  return Math.abs(offset.offset) > most ? { kind: 'apart', offset } : result;
}

function told(result: Believed): RecordFinding[] {
  const where: Where = { key: 'coLocation' };
  if (result.kind === 'apart')
    return [
      {
        code: 'co-location-apart',
        offset: result.offset.offset,
        where: { ...result.offset.where, key: 'coLocation' },
      },
    ];
  const absent = result.absent.map(({ file = '' }) => file);
  const missing: RecordFinding[] =
    absent.length > 0 ? [{ code: 'co-location-absent', files: absent, where }] : [];
  if (result.kind === 'too few loggers') return [{ code: 'co-location-too-few', where }];
  if (result.kind === 'too short')
    return [{ code: 'co-location-too-short', duration: result.duration, where }, ...missing];
  return [
    ...result.offsets.map(
      ({ where: own, offset, standardError }): RecordFinding => ({
        code: 'co-location-offset',
        offset,
        standardError,
        where: { ...own, key: 'coLocation' },
      }),
    ),
    ...result.warnings.map(
      (warning): RecordFinding =>
        warning === 'short spell'
          ? { code: 'co-location-brief', duration: result.to - result.from, where }
          : { code: 'co-location-unsteady', range: result.range, where },
    ),
    ...missing,
  ];
}

const sideBySide = (file: string, { column, time, value }: LogChannel): SideBySide => ({
  file,
  column,
  readings: { time, value },
});

const offsetIn = (result: Believed, file: string, { column }: LogChannel) =>
  result.kind === 'offsets'
    ? result.offsets.find(({ where }) => where.file === file && where.column === column)
    : undefined;

const moved = (channel: LogChannel, offset: number): LogChannel => ({
  ...channel,
  value: channel.value.map((v) => v - offset),
});

const outsideSpell = (channel: LogChannel, { from, to }: { from: number; to: number }): LogChannel =>
  onlyThose(
    channel,
    Uint8Array.from(channel.time, (t) => (t < from || t > to ? 1 : 0)),
  );
