/**
 * A clock far off by the day outdoors: on most days it is warmest some hours after noon by the sun. Weather moves
 * that by hours, so only a clock off by about half a day (morning and afternoon exchanged, another continent's zone)
 * shows, and only over many days.
 */
import { timeAt } from '../series/grid.ts';
import { sunTimesNear } from '../sky/sunTimes.ts';
import { clockOffers, isOff } from './clockOffers.ts';
import type { SenseFinding } from './finding.ts';
import { type Scene, solarDays, whereOf } from './scene.ts';

const HOUR = 3600;
/**
 * [h] By the sun, when the first harmonic of the outdoor temperature is at its height: 14 to 16 in the open, earlier
 * or later by some hours with the sun on a facade.
 */
const WARMEST = 15;
const PLUS_MINUS = 4.5;
const FEWEST_DAYS = 10;
/** How alike the days must be, 0 to 1: the length of the mean of their directions, each as strong as its swing. */
const LEAST_LIKENESS = 0.6;
/** [K] Of the mean day. */
const LEAST_SWING = 1;

export function clockByRhythm(scene: Scene): SenseFinding[] {
  return scene.loggers
    .filter(({ logger }) => logger.place === 'outside')
    .flatMap(({ logger, temperature }): SenseFinding[] => {
      const days = solarDays(scene).flatMap((day) => harmonic(temperature, scene, day) ?? []);
      if (days.length < FEWEST_DAYS) return [];
      const sum = (pick: (it: Harmonic) => number) => days.reduce((all, it) => all + pick(it), 0);
      const [cosine, sine] = [sum((it) => it.cosine) / days.length, sum((it) => it.sine) / days.length];
      const swing = Math.hypot(cosine, sine);
      const likeness = swing / (sum((it) => Math.hypot(it.cosine, it.sine)) / days.length);
      if (2 * swing < LEAST_SWING || likeness < LEAST_LIKENESS) return [];
      const warmestHour = ((Math.atan2(sine, cosine) * 12) / Math.PI + 24) % 24;
      // between half a day back and half a day on
      const behind = ((WARMEST - warmestHour + 36) % 24) - 12;
      const part = {
        from: timeAt(scene.grid, 0),
        to: timeAt(scene.grid, scene.grid.length - 1),
        correction: behind * HOUR,
        low: (behind - PLUS_MINUS) * HOUR,
        high: (behind + PLUS_MINUS) * HOUR,
        days: days.length,
      };
      if (!isOff(part)) return [];
      const offers = clockOffers([part], logger, scene.place).filter((offer) => 'clockOffsetMin' in offer);
      return [{ code: 'clock-off-rhythm', where: whereOf(logger), parts: [part], warmestHour, offers }];
    });
}

interface Harmonic {
  readonly cosine: number;
  readonly sine: number;
}

/** The day's ups and downs as one wave by the sun's clock, its drift from start to end taken out; null with gaps [K]. */
function harmonic(
  temperature: Float64Array,
  { grid, place }: Scene,
  { from, to }: { from: number; to: number },
): Harmonic | null {
  const n = Math.round(86_400 / grid.step);
  if (to - from < n || to >= temperature.length) return null;
  const day = temperature.subarray(from, from + n);
  const drift = (temperature[from + n] - temperature[from]) / n;
  if (day.some(Number.isNaN) || Number.isNaN(drift)) return null;
  const noon = sunTimesNear(timeAt(grid, from) + 12 * HOUR, place).noon;
  let [cosine, sine] = [0, 0];
  day.forEach((it, i) => {
    const hour = 12 + (timeAt(grid, from + i) - noon) / HOUR;
    const angle = (hour * Math.PI) / 12;
    cosine += ((it - drift * i) * Math.cos(angle) * 2) / n;
    sine += ((it - drift * i) * Math.sin(angle) * 2) / n;
  });
  return { cosine, sine };
}
