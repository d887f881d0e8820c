/**
 * A clock that has daylight while the sun is below the horizon. Light bounds the clock from both sides: in the
 * morning it cannot be brighter sooner, in the evening not later than a clear sky is. Cloud, hills and trees only
 * take light away, so they widen the interval and cannot move it off the truth.
 */

import { timesBetween } from '../series/grid.ts';
import { spacingOf } from '../series/steps.ts';
import type { Place } from '../sky/place.ts';
import { sunPosition } from '../sky/sunPosition.ts';
import { sunTimesNear } from '../sky/sunTimes.ts';
import { betweenClockChanges, clockOffers, isOff } from './clockOffers.ts';
import type { ClockError, SenseFinding } from './finding.ts';
import { quantileOf, type Scene, whereOf } from './scene.ts';
import type { Readings } from './sensed.ts';

const HOUR = 3600;
/** [W/m²] Above this it is day; well over what a sensor makes of the night. */
const LIGHT = 10;
/** How far broken cloud and a clear sky's model may lift a reading over it: as a share, and [W/m²]. */
const BRIGHTEST = { share: 1.15, more: 5 };
/** [W/m²] Near noon the sky's brightness says little of the hour. */
const LOW_SUN = 300;
/** [s] For the horizon's height and the sensor; and the share of an interval that a stamp may stand off its middle. */
const TOLERANCE = 300;
const STAMP = 0.25;
/** Mornings (evenings) that may be wrong, lit by lamps. */
const SPOILT = 0.05;
const FEWEST_DAYS = 4;
/** [s] Slower irradiance says nothing. */
const SLOWEST = HOUR;
/** [s] Of the table of the clear sky. */
const FINE = 120;

export function clockBySun({ weather, place, grid, irradiance: onGrid }: Scene): SenseFinding[] {
  if (!weather?.irradiance || weather.irradiance.time.length < 2 || onGrid === null) return [];
  const { time } = weather.irradiance;
  const zone = weather.timeZone ?? place.timeZone;
  const irradiance =
    spacingOf(time) < grid.step
      ? { time: timesBetween(grid, 0, grid.length - 1), value: onGrid }
      : weather.irradiance;
  const parts = betweenClockChanges(time[0], time[time.length - 1], zone).flatMap(
    (span) => clockError(irradiance, span, place) ?? [],
  );
  if (!parts.some(isOff)) return [];
  return [
    {
      code: 'clock-off-sun',
      where: whereOf(weather),
      parts,
      offers: clockOffers(parts, weather, place),
    },
  ];
}

/** Null where too few days have a morning and an evening, or where they contradict each other. */
export function clockError(
  { time, value }: Readings,
  { from, to }: { from: number; to: number },
  place: Place,
): ClockError | null {
  const spacing = spacingOf(time);
  if (spacing > SLOWEST) return null;
  const first = time.findIndex((t) => t >= from);
  const beyond = time.findIndex((t) => t > to);
  const own = {
    time: time.subarray(first, beyond < 0 ? time.length : beyond),
    value: value.subarray(first, beyond < 0 ? time.length : beyond),
  };
  if (own.time.length < 2) return null;
  const bounds = daylightBounds(own, roughly(own, place), spacing, place);
  if (bounds.length < FEWEST_DAYS) return null;
  const reach = STAMP * spacing + TOLERANCE;
  const low =
    quantileOf(
      bounds.map(({ least }) => least),
      1 - SPOILT,
    ) - reach;
  const high =
    quantileOf(
      bounds.map(({ most }) => most),
      SPOILT,
    ) + reach;
  return low > high ? null : { from, to, correction: (low + high) / 2, low, high, days: bounds.length };
}

/** The correction to the quarter hour under which light and sun are least at odds [s]. */
function roughly({ time, value }: Readings, place: Place): number {
  const step = HOUR / 4;
  // one clear sky for every quarter hour from half a day before to half a day after
  const start = Math.floor((time[0] - 12 * HOUR) / step) * step;
  const length = Math.ceil((time[time.length - 1] - time[0] + 24 * HOUR) / step) + 2;
  const sky = timesBetween({ start, step, length }, 0, length - 1).map((t) => clearSky(t, place));
  let best = 0;
  let fewest = Number.POSITIVE_INFINITY;
  for (let correction = -12 * HOUR; correction <= 12 * HOUR; correction += step) {
    let odd = 0;
    for (let i = 0; i < time.length; i++) {
      const clear = sky[Math.round((time[i] + correction - start) / step)];
      if (value[i] > LIGHT ? clear < LIGHT : value[i] <= LIGHT && clear > 10 * LIGHT) odd++;
    }
    if (odd < fewest || (odd === fewest && Math.abs(correction) < Math.abs(best))) {
      fewest = odd;
      best = correction;
    }
  }
  return best;
}

/** Of each whole day: the least correction that its morning allows, and the most that its evening does [s]. */
function daylightBounds({ time, value }: Readings, about: number, spacing: number, place: Place) {
  const bounds: { least: number; most: number }[] = [];
  let i = 0;
  let noon = sunTimesNear(time[0] + about, place).noon;
  for (; noon - about <= time[time.length - 1]; noon = sunTimesNear(noon + 24 * HOUR, place).noon) {
    const sky = clearHalfDay(noon, spacing, place);
    let [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    let readings = 0;
    while (i < time.length && time[i] < noon - about - 12 * HOUR) i++;
    for (; i < time.length && time[i] < noon - about + 12 * HOUR; i++) {
      if (Number.isNaN(value[i])) continue;
      readings++;
      if (value[i] <= LIGHT) continue;
      const fromNoon = beforeNoon(sky, (Math.min(value[i], LOW_SUN) - BRIGHTEST.more) / BRIGHTEST.share);
      if (Number.isNaN(fromNoon)) continue;
      least = Math.max(least, noon - fromNoon - time[i]);
      most = Math.min(most, noon + fromNoon - time[i]);
    }
    const whole = readings >= (0.95 * 24 * HOUR) / spacing;
    if (whole && Number.isFinite(least)) bounds.push({ least, most });
  }
  return bounds;
}

/** The clear sky from noon back to midnight, every `FINE` seconds, each the mean over an interval around it [W/m²]. */
function clearHalfDay(noon: number, interval: number, place: Place): number[] {
  const n = Math.round((12 * HOUR) / FINE);
  const half = Math.round(interval / 2 / FINE);
  const sky = Array.from({ length: n + half + 1 }, (_, k) => clearSky(noon - k * FINE, place));
  return Array.from({ length: n + 1 }, (_, k) => {
    let sum = 0;
    for (let j = k - half; j <= k + half; j++) sum += sky[Math.abs(j)];
    return sum / (2 * half + 1);
  });
}

/** How long before noon a clear sky first has the brightness [s]; NaN where it never does that day. */
function beforeNoon(sky: readonly number[], brightness: number): number {
  for (let k = sky.length - 1; k >= 0; k--) if (sky[k] >= brightness) return k * FINE;
  return Number.NaN;
}

/**
 * Global irradiance of a clear sky [W/m²].
 *
 * @see B. Haurwitz, Insolation in relation to cloudiness and cloud density, J. Meteorology 2 (1945) 154
 */
function clearSky(instant: number, place: Place): number {
  const height = Math.sin(sunPosition(instant, place).elevation);
  return height <= 0 ? 0 : 1098 * height * Math.exp(-0.057 / height);
}
