/** Each room beside the house: how much faster it cools, against what its elements give, and in wind. */
import { mean } from 'simple-statistics';
import { driverOf } from '../../cooling/driver.ts';
import type { RoomTimeConstant } from '../../cooling/index.ts';
import { refit } from '../../cooling/refit.ts';
import { poolRandomEffects } from '../../maths/pooling.ts';
import type { RoomSeries } from '../../series/record.ts';
import { chanceOf } from './chance.ts';
import { type GoesWithWind, goesWithWind } from './inWind.ts';
import { type InWind, type Look, type Sight, standsOut, windOf } from './look.ts';
import { loggerSd, meanOver, type UsedNight } from './nights.ts';
import type { LookNote } from './note.ts';
import { predictedRoom, ratioOf } from './roomDesign.ts';
import type { ToLook } from './whereToLook.ts';

/**
 * Rooms of a sound house differ by their outer faces, windows and mass alone; sd of the logarithm of their time
 * constants over the house's. PRACTICE: 0.14 in the simulated houses of the tuning seeds 100 to 103, rounded up.
 */
const ORDINARY = 0.15;
/**
 * Wind blows into some rooms and out of others of a sound house; sd of the logarithm of the change from a calm night to
 * a windy one. PRACTICE: 0.021 in those houses, what the nights scatter included; rounded up.
 */
const ORDINARY_IN_WIND = 0.03;
/** A room that is warmer than the house gives heat to it as well, up to what it loses per kelvin [–]. PRACTICE. */
const EXCHANGE = 1;
/** Warmer than the house by so much is worth the words [K]. PRACTICE. */
const WARMER = 1;

interface RoomNight {
  readonly logRatio: number;
  readonly variance: number;
  readonly wind: number | null;
  readonly drivingDifference: number;
  /** Room less house [K]. */
  readonly excess: number;
}

/** One for each room that `roomsCooling` could read. */
export function roomsSeen(given: ToLook, nights: readonly UsedNight[]): Sight[] {
  const { record, rooms } = given;
  return rooms.rooms.flatMap((told) => {
    const series = record.rooms.find(
      ({ place, file, room }) => place === 'inside' && file === told.file && room === told.room,
    );
    return series === undefined ? [] : (roomSeen(given, told, series, nights) ?? []);
  });
}

function roomSeen(
  { house, record, design, heatLossAsDrawn, neighbour, rooms }: ToLook,
  { room, file, ratio }: RoomTimeConstant,
  { temperature }: RoomSeries,
  used: readonly UsedNight[],
): Sight | null {
  const driver = driverOf(record, neighbour);
  const nights = used.flatMap(({ window, timeConstant, drivingDifference, wind }): RoomNight[] => {
    const excess = meanOver(window, (i) => temperature[i] - record.insideTemperature[i]);
    const own = refit(record, temperature, driver, window);
    if (own.kind === 'not fitted' || excess === null) return [];
    const logRatio = Math.log(own.timeConstant.value / timeConstant);
    return [{ logRatio, variance: own.logSe ** 2, wind, drivingDifference, excess }];
  });
  const pooled = poolRandomEffects(
    nights.map(({ logRatio }) => logRatio),
    nights.map(({ variance }) => variance),
  );
  if (pooled.kind === 'not pooled') return null;
  const difference = mean(nights.map((night) => night.drivingDifference));
  const excess = mean(nights.map((night) => night.excess));
  const predicted = predictedRoom(house, design, heatLossAsDrawn, neighbour, room);
  const { mean: usual, sd } = predicted ?? { mean: 0, sd: ORDINARY };
  const known = Math.hypot(sd, loggerSd(record) / difference, (EXCHANGE * Math.max(0, excess)) / difference);
  const expected = predicted && ratioOf(predicted);
  const fastest = rooms.fastest?.file === file && rooms.fastest.room === room;
  return {
    place: room,
    file,
    kind: 'room',
    figure: ratio,
    expected,
    inWind: inWindOf(nights),
    chance: chanceOf(usual - pooled.mean, pooled.se, pooled.degreesOfFreedom, known),
    say: (look, weak) => notesOf(look, room, fastest && !weak, excess),
  };
}

function inWindOf(nights: readonly RoomNight[]): InWind | null {
  const line = goesWithWind(
    nights.flatMap(({ wind, logRatio }) => (wind === null ? [] : [{ wind, value: logRatio }])),
  );
  if (line === null) return null;
  const slower = line.change.value;
  return { ...asFactor(line), chance: chanceOf(-slower, line.se, line.degreesOfFreedom, ORDINARY_IN_WIND) };
}

const asFactor = ({ change, calm, windy, nights }: GoesWithWind) => ({
  change: { value: Math.exp(change.value), low: Math.exp(change.low), high: Math.exp(change.high) },
  calm,
  windy,
  nights,
});

function notesOf(
  { figure, expected, inWind, chance }: Omit<Look, 'notes'>,
  room: string,
  fastest: boolean,
  excess: number,
): LookNote[] {
  const faster = chance !== null && standsOut(chance);
  const blown = inWind !== null && standsOut(inWind.chance);
  return [
    ...(faster ? [{ code: 'look-room-faster', room, ratio: figure, expected, chance } as const] : []),
    ...(blown ? [{ code: 'look-room-in-wind', place: room, ...windOf(inWind) } as const] : []),
    ...(fastest && !faster ? [{ code: 'look-room-ordinary', room, ratio: figure, expected } as const] : []),
    ...((faster || fastest) && excess >= WARMER ? [{ code: 'look-room-warmer', room, excess } as const] : []),
  ];
}
