/** How far each room stands below the house at the end of free cooling: rooms exchange heat and soon fall together. */
import { mean, standardDeviation } from 'simple-statistics';
import type { CoolingWindow } from '../../cooling/index.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import type { HouseRecord, RoomSeries } from '../../series/record.ts';
import { chanceOf } from './chance.ts';
import { type Sight, standsOut } from './look.ts';
import { loggerSd, meanOver, type UsedNight } from './nights.ts';

/**
 * Rooms of a sound house stand so far apart by their outer faces and what heats them [–]. PRACTICE: 0.027 in the
 * simulated houses of the tuning seeds 100 to 103, rounded up.
 */
const ORDINARY = 0.03;
/** The level is read from so long at either end of a window [s]. */
const END = 3600;
const FEWEST_NIGHTS = 3;
/** No room is as even as that from night to night [–]. */
const LEAST_SE = 0.001;

/** One for each inside room, where there are two or more. */
export function roomLevelsSeen(record: HouseRecord, nights: readonly UsedNight[]): Sight[] {
  const inside = record.rooms.filter(({ place }) => place === 'inside');
  return inside.length < 2 ? [] : inside.flatMap((room) => levelSeen(record, room, nights) ?? []);
}

/**
 * A room that was only heated less catches up in the night with those around it, one that loses more does not. What it
 * caught up within the window is given to it once more: of the way that is left it has gone half by then, or more.
 */
function levelSeen(
  record: HouseRecord,
  { room, file, temperature }: RoomSeries,
  used: readonly UsedNight[],
): Sight | null {
  const { insideTemperature: house, outsideTemperature: outside } = record;
  const reach = Math.round(END / record.grid.step);
  const nights = used.flatMap(({ window: { first, last } }) => {
    const level = (at: CoolingWindow) => {
      const own = meanOver(at, (i) => temperature[i] - outside[i]);
      const all = meanOver(at, (i) => house[i] - outside[i]);
      return own === null || all === null || all <= 0 ? null : { level: own / all, difference: all };
    };
    const evening = level({ first, last: first + reach });
    const morning = level({ first: last - reach, last });
    return evening === null || morning === null
      ? []
      : [{ evening: evening.level, morning: morning.level, difference: morning.difference }];
  });
  if (nights.length < FEWEST_NIGHTS) return null;
  const mornings = nights.map(({ morning }) => morning);
  const [morning, evening] = [mean(mornings), mean(nights.map((night) => night.evening))];
  const freedom = nights.length - 1;
  const se = Math.max(LEAST_SE, standardDeviation(mornings) / Math.sqrt(freedom));
  const logger = loggerSd(record) / mean(nights.map(({ difference }) => difference));
  const half = Math.hypot(studentTQuantile(0.975, freedom) * se, NORMAL_95 * logger);
  const figure = { value: morning, low: morning - half, high: morning + half };
  const caughtUp = Math.max(0, morning - evening);
  return {
    place: room,
    file,
    kind: 'room-level',
    figure,
    expected: null,
    inWind: null,
    chance: chanceOf(1 - morning - caughtUp, se, freedom, Math.hypot(logger, ORDINARY)),
    say: ({ chance }) =>
      chance !== null && standsOut(chance)
        ? [{ code: 'look-room-colder', room, level: figure, evening, chance }]
        : [],
  };
}
