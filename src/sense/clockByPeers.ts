/**
 * A clock that is off against the others of the house: heating that starts, a window, a front that passes are seen
 * by all inside, or all outside, at once. What recurs every day at the same time is taken out first: two rooms may
 * well be heated at different hours, and only what is irregular tells a clock from a habit.
 */

import type { Where } from '../assessment.ts';
import { spacingOf } from '../series/steps.ts';
import type { Place } from '../sky/place.ts';
import { betweenClockChanges, clockOffers, isOff } from './clockOffers.ts';
import type { SenseFinding } from './finding.ts';
import { type Course, type PartShift, partOf, partShift, SAME } from './pairShift.ts';
import { type Scene, whereOf } from './scene.ts';

/** [s] Slower readings do not see a step. */
const SLOWEST = 3600;

export function clockByPeers(scene: Scene): SenseFinding[] {
  const at = (place: 'inside' | 'outside'): Course[] =>
    scene.loggers
      .filter(({ logger }) => logger.place === place)
      .map(({ logger, temperature }) => ({
        clock: logger,
        asked: true,
        spacing: spacingOf(logger.temperature.time),
        temperature,
      }));
  const { weather, weatherTemperature } = scene;
  const station =
    weather?.temperature && weatherTemperature
      ? [
          {
            clock: weather,
            asked: false,
            spacing: spacingOf(weather.temperature.time),
            temperature: weatherTemperature,
          },
        ]
      : [];
  return [at('inside'), [...at('outside'), ...station]].flatMap((group) => groupFindings(group, scene));
}

interface PairShift {
  readonly a: number;
  readonly b: number;
  /** What to add to b's clock to agree with a's, by parts of the record; empty where nothing is clear. */
  readonly parts: readonly PartShift[];
}

function groupFindings(group: readonly Course[], scene: Scene): SenseFinding[] {
  const usable = group.filter(({ spacing }) => spacing > 0 && spacing <= SLOWEST);
  if (usable.length < 2) return [];
  const { grid, place } = scene;
  const end = grid.start + grid.step * (grid.length - 1);
  const recordParts = betweenClockChanges(grid.start, end, place.timeZone).map((span) => partOf(span, grid));
  const pairs: PairShift[] = [];
  for (let a = 0; a < usable.length; a++)
    for (let b = a + 1; b < usable.length; b++) {
      const sameFile = usable[a].clock.file === usable[b].clock.file;
      pairs.push({
        a,
        b,
        parts: sameFile ? [] : recordParts.flatMap((part) => partShift(usable[a], usable[b], part) ?? []),
      });
    }
  return usable.flatMap((one, k) => oneAgainstOthers(one, k, usable, pairs, place) ?? []);
}

/** A logger is asked about when it is off against all others that say anything, by the same shift. */
function oneAgainstOthers(
  one: Course,
  k: number,
  group: readonly Course[],
  pairs: readonly PairShift[],
  place: Place,
): SenseFinding | null {
  if (!one.asked) return null;
  const speaking = pairs
    .filter(({ a, b, parts }) => (a === k || b === k) && parts.length > 0)
    .map(({ a, b, parts }) => ({ other: a === k ? b : a, parts: b === k ? parts : parts.map(turned) }));
  if (speaking.length === 0) return null;
  const off = speaking.filter(({ parts }) => parts.some(isOff));
  const majority = speaking.length > 1;
  if (off.length <= speaking.length / 2) return null;
  // of a pair of loggers alone the second is asked about, unless the other is a station
  if (!majority && group[off[0].other].asked && off[0].other > k) return null;
  const best = off.reduce((x, y) => (strength(x.parts) >= strength(y.parts) ? x : y));
  const agree = off.every(({ parts }) =>
    parts.every((part) =>
      best.parts.every((it) => it.from !== part.from || Math.abs(it.correction - part.correction) <= SAME),
    ),
  );
  if (!agree) return null;
  const against: Where[] = off.map(({ other }) => whereOf(group[other].clock));
  const first = best.parts.find(isOff) ?? best.parts[0];
  return {
    code: 'clock-off-peers',
    where: whereOf(one.clock),
    parts: best.parts.map(({ from, to, correction, low, high, days }) => ({
      from,
      to,
      correction,
      low,
      high,
      days,
    })),
    against,
    majority,
    correlationNow: first.correlationNow,
    correlationThen: first.correlationThen,
    offers: clockOffers(best.parts, one.clock, place),
  };
}

const strength = (parts: readonly PartShift[]) =>
  parts.reduce((sum, { correlationThen, days }) => sum + correlationThen * days, 0);
const turned = (part: PartShift): PartShift => ({
  ...part,
  correction: -part.correction,
  low: -part.high,
  high: -part.low,
});
