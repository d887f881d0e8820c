/** Faults to plant into loggers that are in order. */
import type { SensedLogger } from '../../src/sense/index.ts';
import { sunPosition } from '../proving/sun.ts';
import { changed, HOUR, place, type SimulatedHouse } from './simulatedHouse.ts';

/** The house's loggers with one of them replaced. */
export const withFault = (
  { loggers }: SimulatedHouse,
  file: string,
  fault: (logger: SensedLogger) => SensedLogger,
) => loggers.map((it) => (it.file === file ? fault(it) : it));

/** Two entries of house.json with each other's place. */
export const exchanged = ({ loggers }: SimulatedHouse, one: string, other: string): SensedLogger[] => {
  const placeOf = (file: string) => loggers.find((it) => it.file === file)?.place ?? 'inside';
  const taken = new Map([
    [one, placeOf(other)],
    [other, placeOf(one)],
  ]);
  return loggers.map((it) => ({ ...it, place: taken.get(it.file) ?? it.place }));
};

/** For so many hours at another temperature, then (or before) the logger's own with a lag of a quarter hour. */
export function carriedAbout(
  logger: SensedLogger,
  hours: number,
  temperature: number,
  end = false,
): SensedLogger {
  const { time } = logger.temperature;
  const edge = end ? time[time.length - 1] : time[0];
  return changed(logger, (own, t) => {
    const since = Math.abs(t - edge) - hours * HOUR;
    if (since < 0) return temperature + 0.3 * Math.sin(t / 1000);
    return end ? own : own + (temperature - own) * Math.exp(-since / 900);
  });
}

/**
 * While the sky is clear and the sun within so many degrees of a bearing, warmer by so much, with a lag.
 *
 * @param bearing and `within` in degrees
 */
export function sunlit(
  { air, global }: SimulatedHouse,
  logger: SensedLogger,
  sun: { readonly bearing: number; readonly within: number; readonly gain: number; readonly lag: number },
): SensedLogger {
  let [bump, before] = [0, logger.temperature.time[0]];
  return changed(logger, (own, t) => {
    const { altitude, bearing } = sunPosition(t, place.latitude, place.longitude);
    const height = Math.sin(altitude);
    const clear = height > 0.05 ? 1098 * height * Math.exp(-0.059 / height) : Number.POSITIVE_INFINITY;
    const shines = global[Math.min(global.length - 1, Math.round((t - air.start) / air.step))] > 0.6 * clear;
    const faces = Math.abs((bearing * 180) / Math.PI - sun.bearing) < sun.within;
    bump += ((shines && faces ? sun.gain : 0) - bump) * (1 - Math.exp(-(t - before) / sun.lag));
    before = t;
    return own + bump;
  });
}
