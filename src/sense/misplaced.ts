/**
 * Loggers that stand elsewhere than their entry says. Only a heated house in the cold tells: what is said to be
 * outdoors is then always warmer than what is said to be inside, which nothing but a mistake (or a cellar) makes.
 */
import { known } from '../series/known.ts';
import type { Offer, SenseFinding } from './finding.ts';
import { commonCourse, type Laid, medianOf, type Scene, solarDays, whereOf } from './scene.ts';

/** [K] Between indoors and outdoors, on average; and the share of the time that the one is above the other. */
const LEAST_DIFFERENCE = 4;
const LEAST_SHARE = 0.95;
/** [°C] A mean above this is no winter outdoors: then the colder may be a cellar. */
const WARMEST_OUTDOORS = 14;
/** [K] Of a day outdoors; a cellar, which may stay colder than a spring, has less. */
const LEAST_RANGE = 1;
/** How much of the outdoor ups and downs a logger follows that stands outdoors. */
const FOLLOWS = 0.5;
/** [K] How near to those it belongs to instead, as a share of what lies between the two places. */
const NEAR = 0.35;
const FEWEST_DAYS = 2;

export function misplaced(scene: Scene): SenseFinding[] {
  const inside = scene.loggers.filter(({ logger }) => logger.place === 'inside');
  const beyond = scene.loggers.filter(({ logger }) => logger.place === 'outside' || logger.place === 'void');
  const swaps: SenseFinding[] = [];
  const taken = new Set<Laid>();
  for (const cold of inside)
    for (const warm of beyond) {
      if (taken.has(cold) || taken.has(warm)) continue;
      const finding = swapped(scene, cold, warm);
      if (finding === null) continue;
      swaps.push(finding);
      taken.add(cold).add(warm);
    }
  const left = scene.loggers.filter((it) => !taken.has(it));
  // a house whose loggers are swapped has no ground left to judge the others by
  return swaps.length > 0 ? swaps : left.flatMap((it) => elsewhere(scene, it) ?? []);
}

/** `cold` is said to be inside, `warm` outside or in a void; null unless it is the other way round. */
function swapped(scene: Scene, cold: Laid, warm: Laid): SenseFinding | null {
  const { differences, days } = between(warm.temperature, cold.temperature, scene);
  if (days < FEWEST_DAYS) return null;
  const warmer = differences.filter((it) => it > 0).length / differences.length;
  const warmerBy = mean(differences);
  const level = mean(known(cold.temperature));
  if (warmerBy < LEAST_DIFFERENCE || warmer < LEAST_SHARE || level > WARMEST_OUTDOORS) return null;
  const dailyRange = medianOf(dailyRanges(warm.temperature, scene));
  const otherDailyRange = medianOf(dailyRanges(cold.temperature, scene));
  if (!(otherDailyRange >= LEAST_RANGE) || !mayStandOutdoors(scene, cold, warm)) return null;
  return {
    code: 'loggers-swapped',
    where: whereOf(warm.logger),
    other: whereOf(cold.logger),
    warmerBy,
    dailyRange,
    otherDailyRange,
    days,
    offers: [{ place: 'inside' }],
  };
}

/**
 * Whether it follows other thermometers outdoors by half at least (an unheated porch does less). Without any, what is
 * warmer outdoors is enough to ask; a warm void is not.
 */
function mayStandOutdoors(scene: Scene, cold: Laid, warm: Laid): boolean {
  const others = scene.loggers
    .filter((it) => it !== warm && it.logger.place === 'outside')
    .map(({ temperature }) => temperature);
  const weather = scene.weatherTemperature ? [scene.weatherTemperature] : [];
  const outdoors = meanCourse([...others, ...weather], scene);
  if (outdoors === null) return warm.logger.place === 'outside';
  return follows(cold.temperature, outdoors, scene) >= FOLLOWS;
}

/** One logger among others that are where they should be. */
function elsewhere(scene: Scene, one: Laid): SenseFinding | null {
  const { place } = one.logger;
  if (place !== 'inside' && place !== 'outside') return null;
  const at = (where: 'inside' | 'outside') => {
    const others = scene.loggers
      .filter((it) => it !== one && it.logger.place === where)
      .map((it) => it.temperature);
    const weather = where === 'outside' && scene.weatherTemperature ? [scene.weatherTemperature] : [];
    return [...others, ...weather];
  };
  const looksLike = place === 'inside' ? 'outside' : 'inside';
  const [own, other] = [at(place), at(looksLike)].map((series) => meanCourse(series, scene));
  const outdoors = place === 'outside' ? own : other;
  if (own === null || other === null || outdoors === null) return null;
  const house = between(own, other, scene);
  const toOwn = between(one.temperature, own, scene);
  const toOther = between(one.temperature, other, scene);
  if (Math.min(toOwn.days, toOther.days) < FEWEST_DAYS) return null;
  const apart = Math.abs(mean(house.differences));
  const [fromOwn, fromOther] = [mean(toOwn.differences), mean(toOther.differences)];
  const followsOutdoors = follows(one.temperature, outdoors, scene);
  const isThere =
    apart >= LEAST_DIFFERENCE &&
    Math.abs(fromOther) <= NEAR * apart &&
    Math.abs(fromOwn) >= (1 - NEAR) * apart &&
    (looksLike === 'inside' || followsOutdoors >= FOLLOWS);
  const heated = mean(house.differences) > 0 === (place === 'inside');
  if (!isThere || !heated) return null;
  const offers: Offer[] = [{ place: looksLike }];
  return {
    code: 'logger-placed-elsewhere',
    where: whereOf(one.logger),
    place,
    looksLike,
    fromOwn,
    fromOther,
    followsOutdoors,
    days: toOwn.days,
    offers,
  };
}

/** One less the other wherever both are there, and how many days that is. */
function between(one: Float64Array, other: Float64Array, { grid }: Scene) {
  const differences = known(one.map((it, i) => it - other[i]));
  return { differences, days: (differences.length * grid.step) / 86_400 };
}

/** Of each day that is there whole or nearly: largest less smallest [K]. */
function dailyRanges(temperature: Float64Array, scene: Scene): number[] {
  return solarDays(scene).flatMap(({ from, to }) => {
    const day = known(temperature.subarray(from, to));
    return day.length < (0.8 * 86_400) / scene.grid.step ? [] : [Math.max(...day) - Math.min(...day)];
  });
}

/** Slope of the daily ups and downs over those outdoors, about each day's mean. */
function follows(temperature: Float64Array, outdoors: Float64Array, scene: Scene): number {
  let cross = 0;
  let square = 0;
  for (const { from, to } of solarDays(scene)) {
    const cells = Array.from({ length: to - from }, (_, i) => from + i).filter(
      (i) => !Number.isNaN(temperature[i]) && !Number.isNaN(outdoors[i]),
    );
    const [a, b] = [mean(cells.map((i) => temperature[i])), mean(cells.map((i) => outdoors[i]))];
    for (const i of cells) {
      cross += (temperature[i] - a) * (outdoors[i] - b);
      square += (outdoors[i] - b) ** 2;
    }
  }
  return square > 0 ? cross / square : Number.NaN;
}

/** Their common course at its level; null of none. */
function meanCourse(series: readonly Float64Array[], scene: Scene): Float64Array | null {
  if (series.length === 0) return null;
  const level = medianOf(series.map(scene.levelOf));
  return commonCourse(series, scene).map((it) => it + level);
}

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return sum / values.length;
}
