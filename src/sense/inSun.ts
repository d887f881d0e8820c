/** A logger that the sun shines on: by day, at its own hours, it stands far above the others, and never by night. */
import { timeAt } from '../series/grid.ts';
import { zoneOffset } from './clockOffers.ts';
import type { LocalSpans, SenseFinding, SunFinding } from './finding.ts';
import { commonCourse, type Laid, medianOf, quantileOf, type Scene, solarDays, whereOf } from './scene.ts';
import { localText } from './spans.ts';

const HOUR = 3600;
/** [rad] The sun is up; below this it has set, and what it warmed cools for another hour. */
const UP = (2 * Math.PI) / 180;
const FEWEST_DAYS = 3;
/** Of the days of the record. */
const LEAST_SHARE = 0.08;
/** [K] What a bump must rise above the others, outdoors and indoors, and how much of it within half an hour. */
const outdoors = { height: 3, sharp: 1.5 };
const indoors = { height: 2.5, sharp: 2 };
/** [K] The same without another thermometer outdoors, over what the day itself makes. */
const alone = { height: 3.5, sharp: 2 };
/** [s] A shorter bump than this stands out from the day's own course. */
const LONGEST_ALONE = 6 * HOUR;
/** Bumps by night, as a share of those by day, that a sunny place may have. */
const MOST_BY_NIGHT = 0.1;
/** [h] A patch of sun comes at its own hour: the spread of the bumps' beginnings indoors. */
const WIDEST_INDOORS = 3;
/** How much brighter it must be on average during bumps than at the same hours without one. */
const BRIGHTER = 1.3;

export function inSun(scene: Scene): SenseFinding[] {
  return scene.loggers.flatMap((one) => {
    const { place } = one.logger;
    if (place !== 'outside' && place !== 'inside') return [];
    const peers = scene.loggers.filter((it) => it !== one && it.logger.place === place);
    const others = [
      ...peers.map((it) => it.temperature),
      ...(place === 'outside' && scene.weatherTemperature ? [scene.weatherTemperature] : []),
    ];
    if (others.length === 0)
      return place === 'outside'
        ? found(scene, one, overOwnCourse(one.temperature, scene), alone, false)
        : [];
    const excess = overOthers(one.temperature, commonCourse(others, scene), scene);
    // of two loggers the one in the shade is below the other as much as that is above it: only a rise counts
    return found(scene, one, excess, place === 'outside' ? outdoors : indoors, place === 'outside');
  });
}

/** The logger less the others, and less what it usually has over them by night [K]. */
function overOthers(temperature: Float64Array, others: Float64Array, { elevation }: Scene): Float64Array {
  const excess = temperature.map((it, i) => it - others[i]);
  const usual = medianOf(excess.filter((_, i) => elevation[i] < 0));
  return excess.map((it) => it - usual);
}

/** The logger less its own course without whatever rises and falls within some hours (a morphological opening) [K]. */
function overOwnCourse(temperature: Float64Array, { grid }: Scene): Float64Array {
  const reach = Math.round(LONGEST_ALONE / 2 / grid.step);
  const opened = sliding(sliding(temperature, reach, Math.min), reach, Math.max);
  return temperature.map((it, i) => it - opened[i]);
}

function found(
  scene: Scene,
  one: Laid,
  excess: Float64Array,
  needed: { readonly height: number; readonly sharp: number },
  sure: boolean,
): SenseFinding[] {
  const { grid, elevation, azimuth, place } = scene;
  const nights = quantileOf(
    excess.filter((_, i) => elevation[i] < 0),
    0.99,
  );
  const threshold = Math.max(needed.height, Number.isNaN(nights) ? 0 : 1.5 * nights);
  const days = solarDays(scene);
  const bumps = days.flatMap((day) => bumpOf(scene, excess, day, threshold, needed.sharp) ?? []);
  const nightBumps = days.filter(({ from, to }) => hasNightBump(scene, excess, from, to, needed)).length;
  if (bumps.length < Math.max(FEWEST_DAYS, LEAST_SHARE * days.length)) return [];
  if (nightBumps > MOST_BY_NIGHT * bumps.length) return [];
  const cells = bumps.flatMap(({ cells }) => cells);
  if (!isBright(scene, cells)) return [];
  const hourOf = (i: number) => {
    const time = timeAt(grid, i);
    return ((((time + zoneOffset(time, place.timeZone)) / HOUR) % 24) + 24) % 24;
  };
  const begins = bumps.map(({ cells }) => hourOf(cells[0]));
  if (one.logger.place === 'inside' && quantileOf(begins, 0.9) - quantileOf(begins, 0.1) > WIDEST_INDOORS)
    return [];
  const hours = cells.map(hourOf);
  const azimuths = cells.map((i) => azimuth[i]);
  const heights = bumps.map(({ height }) => height);
  const spans: LocalSpans = bumps.map(({ cells }) => ({
    from: localText(timeAt(grid, cells[0]) - grid.step / 2, place.timeZone),
    to: localText(timeAt(grid, cells[cells.length - 1]) + grid.step / 2, place.timeZone),
    why: 'in the sun',
  }));
  const finding: SunFinding = {
    code: 'logger-in-sun',
    sure,
    fromHour: quantileOf(hours, 0.05),
    toHour: quantileOf(hours, 0.95),
    fromAzimuth: quantileOf(azimuths, 0.05),
    toAzimuth: quantileOf(azimuths, 0.95),
    height: medianOf(heights),
    highest: Math.max(...heights),
    sunnyDays: bumps.length,
    days: days.length,
    byDay: cells.filter((i) => elevation[i] >= 0).length * grid.step,
    byNight: cells.filter((i) => elevation[i] < 0).length * grid.step,
  };
  return [{ ...finding, where: whereOf(one.logger), offers: [{ leaveOut: spans }] }];
}

/** A day's bump: its cells from half its threshold up to half its threshold down; null without a sharp, sunlit one. */
function bumpOf(
  { elevation, grid }: Scene,
  excess: Float64Array,
  { from, to }: { from: number; to: number },
  threshold: number,
  sharp: number,
): { cells: number[]; height: number } | null {
  let top = -1;
  for (let i = from; i < to; i++)
    if (elevation[i] > UP && excess[i] > threshold && !(excess[top] >= excess[i])) top = i;
  if (top < 0) return null;
  let [first, last] = [top, top];
  while (first > from && excess[first - 1] > threshold / 2) first--;
  while (last < to - 1 && excess[last + 1] > threshold / 2) last++;
  const half = Math.round(HOUR / 2 / grid.step);
  let [rise, fall] = [0, 0];
  for (let i = Math.max(from, first - half); i <= last && i + half < to; i++) {
    rise = Math.max(rise, excess[i + half] - excess[i]);
    fall = Math.max(fall, excess[i] - excess[i + half]);
  }
  if (rise < sharp || fall < sharp / 2) return null;
  // what begins in the dark is none of the sun's
  if (elevation[first] < -UP) return null;
  return { cells: Array.from({ length: last - first + 1 }, (_, i) => first + i), height: excess[top] };
}

/** A bump as high and as sharp as the sun's, in the dark. */
function hasNightBump(
  { elevation, grid }: Scene,
  excess: Float64Array,
  from: number,
  to: number,
  { height, sharp }: { height: number; sharp: number },
): boolean {
  const half = Math.round(HOUR / 2 / grid.step);
  for (let i = from; i + half < to; i++)
    if (elevation[i] < -UP && excess[i + half] > height / 2 && excess[i + half] - excess[i] > sharp)
      return true;
  return false;
}

/** Whether it was brighter in the bumps than at the same hours of the other days; true where no irradiance is known. */
function isBright({ irradiance, grid }: Scene, cells: readonly number[]): boolean {
  if (irradiance === null) return true;
  const perDay = Math.round(86_400 / grid.step);
  const inBumps = new Set(cells);
  const hours = new Set(cells.map((i) => i % perDay));
  const [during, without] = [
    { sum: 0, count: 0 },
    { sum: 0, count: 0 },
  ];
  irradiance.forEach((it, i) => {
    if (Number.isNaN(it) || !hours.has(i % perDay)) return;
    const heap = inBumps.has(i) ? during : without;
    heap.sum += it;
    heap.count++;
  });
  if (during.count === 0 || without.count === 0) return true;
  return during.sum / during.count > (BRIGHTER * without.sum) / without.count;
}

/** At each cell the least (or most) of those within reach; NaN are passed over. */
function sliding(values: Float64Array, reach: number, pick: (a: number, b: number) => number): Float64Array {
  return values.map((_, i) => {
    let best = Number.NaN;
    for (let k = Math.max(0, i - reach); k <= Math.min(values.length - 1, i + reach); k++)
      if (!Number.isNaN(values[k])) best = Number.isNaN(best) ? values[k] : pick(best, values[k]);
    return best;
  });
}
