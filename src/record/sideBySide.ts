/** The spell in which all loggers lay side by side: it tells what each is off, and is no reading of its place. */
import type { Where } from '../assessment.ts';
import type { House } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { type CoLocation, coLocationOffsets, type SideBySide, steadyHumidity } from '../sense/index.ts';
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
  const warm = coLocationOffsets(
    loggers.map(({ logger, temperature }) => sideBySide(logger.file, temperature)),
    span,
  );
  const moist = coLocationOffsets(
    loggers.flatMap(({ logger, humidity }) => (humidity === null ? [] : [sideBySide(logger.file, humidity)])),
    span,
    steadyHumidity,
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

function told(result: CoLocation): RecordFinding[] {
  const where: Where = { key: 'coLocation' };
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

const offsetIn = (result: CoLocation, file: string, { column }: LogChannel) =>
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
