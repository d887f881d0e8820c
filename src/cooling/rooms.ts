/** How each room cools beside the house, over the same windows. */
import type { Estimate } from '../assessment.ts';
import { logInterval, NORMAL_95 } from '../maths/logInterval.ts';
import { type Pooling, poolRandomEffects } from '../maths/pooling.ts';
import { studentTQuantile } from '../maths/studentT.ts';
import type { HouseRecord, RoomSeries } from '../series/record.ts';
import { driverOf, type Neighbour } from './driver.ts';
import type { JudgedNight } from './judge.ts';
import { refit } from './refit.ts';

export interface RoomTimeConstant {
  readonly room: string;
  readonly file: string;
  /** [s] */
  readonly timeConstant: Estimate;
  /** The room's over the house's, night by night [–]; its interval allows for how many rooms are compared. */
  readonly ratio: Estimate;
  readonly nights: number;
}

export interface RoomsCooling {
  readonly rooms: readonly RoomTimeConstant[];
  /** The room that cools fastest, when its ratio's interval is clear of 1. */
  readonly fastest: RoomTimeConstant | null;
}

/** Fewer say nothing about one room against another. */
const FEWEST_NIGHTS = 3;

/**
 * Each inside room's own series fitted over the used nights' windows, driven as the house is, and pooled. Rooms
 * exchange heat, so a room that cools faster loses more than the ratio says.
 *
 * @param neighbour as it was given to `judgeNights`
 */
export function roomsCooling(
  record: HouseRecord,
  nights: readonly JudgedNight[],
  neighbour: Neighbour | null = null,
): RoomsCooling {
  const driver = driverOf(record, neighbour);
  const inside = record.rooms.filter(({ place }) => place === 'inside');
  if (inside.length < 2) return { rooms: [], fastest: null };
  const rooms = inside.flatMap((room) => roomOf(record, room, nights, driver, inside.length) ?? []);
  const [first] = rooms.toSorted((a, b) => a.ratio.value - b.ratio.value);
  return { rooms, fastest: first !== undefined && first.ratio.high < 1 ? first : null };
}

function roomOf(
  record: HouseRecord,
  { room, file, temperature }: RoomSeries,
  nights: readonly JudgedNight[],
  driver: Float64Array,
  compared: number,
): RoomTimeConstant | null {
  const pairs = nights.flatMap(({ used, window, fit, drivingDifference }) => {
    if (!used || window === null || fit?.kind !== 'fitted' || drivingDifference === null) return [];
    const missing = temperature.subarray(window.first, window.last + 1).filter(Number.isNaN).length;
    if (missing * record.grid.step > LONGEST_GAP) return [];
    const own = refit(record, temperature, driver, window);
    return own.kind === 'fitted' ? [{ own, house: fit, drivingDifference }] : [];
  });
  if (pairs.length < FEWEST_NIGHTS) return null;
  const variances = pairs.map(({ own }) => own.logSe ** 2);
  const own = poolRandomEffects(
    pairs.map((pair) => Math.log(pair.own.timeConstant.value)),
    variances,
  );
  const ratio = poolRandomEffects(
    pairs.map((pair) => Math.log(pair.own.timeConstant.value / pair.house.timeConstant.value)),
    variances,
  );
  if (own.kind === 'not pooled' || ratio.kind === 'not pooled') return null;
  const difference = pairs.reduce((sum, pair) => sum + pair.drivingDifference, 0) / pairs.length;
  const offset = record.differenceSd / difference;
  return {
    room,
    file,
    timeConstant: estimateOf(own, offset, 1),
    ratio: estimateOf(ratio, offset, compared),
    nights: pairs.length,
  };
}

const LONGEST_GAP = 3600; // [s]

/** @param of how many that are looked at together: Bonferroni's correction keeps 95 % for all of them */
function estimateOf(
  { mean, se, degreesOfFreedom }: Extract<Pooling, { kind: 'pooled' }>,
  offset: number,
  of: number,
): Estimate {
  const half = Math.hypot(studentTQuantile(1 - 0.025 / of, degreesOfFreedom) * se, NORMAL_95 * offset);
  return logInterval(Math.exp(mean), half, 0, 1);
}
