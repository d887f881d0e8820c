/** The rooms of a house taken together: their mean air, and night by night what they hold over outdoors. */
import type { LoggerMoisture, MeanMoisture } from '../../server/api/loggerShapes.ts';
import type { MoistNight } from '../../src/words/aboutHumidity.ts';

/** The plain mean over the loggers inside; null without one. */
export function roomsMean(loggers: readonly LoggerMoisture[]): MeanMoisture | null {
  const rooms = insideOf(loggers).map(({ mean }) => mean);
  if (rooms.length === 0) return null;
  const mean = (of: (it: MeanMoisture) => number | null) => meanOf(rooms.map(of).filter((it) => it !== null));
  return {
    temperatureC: mean((it) => it.temperatureC) ?? 0,
    humidityPercent: mean((it) => it.humidityPercent) ?? 0,
    absoluteGM3: mean((it) => it.absoluteGM3) ?? 0,
    dewPointC: mean((it) => it.dewPointC),
    excessGM3: mean((it) => it.excessGM3),
  };
}

/**
 * Nights of which the excess is known, the earliest first: the mean over the loggers inside.
 *
 * @param outside the file that stands for the air outside
 */
export function moistNights(loggers: readonly LoggerMoisture[], outside: string | null): MoistNight[] {
  const there = loggers.find(({ file }) => file === outside);
  return (there?.nights ?? []).flatMap(({ date, temperatureC: outsideC }) => {
    const over = insideOf(loggers)
      .flatMap(({ nights }) => nights)
      .flatMap((it) => (it.date === date && it.excessGM3 !== null ? [it.excessGM3] : []));
    const excessGM3 = meanOf(over);
    return excessGM3 === null ? [] : [{ excessGM3, outsideC }];
  });
}

const insideOf = (loggers: readonly LoggerMoisture[]) => loggers.filter(({ place }) => place === 'inside');

const meanOf = (values: readonly number[]) =>
  values.length === 0 ? null : values.reduce((sum, it) => sum + it, 0) / values.length;
