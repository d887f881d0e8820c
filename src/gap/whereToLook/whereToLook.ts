/** Where to look first while it can still be mended: rooms, voids and surfaces, the least likely by chance first. */
import type { Neighbour, RoomsCooling, StageNights } from '../../cooling/index.ts';
import type { Design } from '../../fabric/index.ts';
import type { SurfaceHint } from '../../heatloss/index.ts';
import type { House } from '../../house.ts';
import type { HouseRecord } from '../../series/record.ts';
import { together } from './chance.ts';
import { windVaries } from './inWind.ts';
import { type Look, leastChance, type Sight, STANDS_OUT, standsOut } from './look.ts';
import { type UsedNight, usedNights } from './nights.ts';
import type { LooksNote } from './note.ts';
import { roomLevelsSeen } from './roomLevels.ts';
import { roomsSeen } from './rooms.ts';
import { surfacesSeen } from './surfaces.ts';
import { moistureSeen } from './voidMoisture.ts';
import { voidsSeen } from './voids.ts';

export interface ToLook {
  readonly house: House;
  readonly record: HouseRecord;
  readonly design: Design | null;
  /** In the state in which it was measured [W/K]. */
  readonly heatLossAsDrawn: number | null;
  readonly neighbour: Neighbour | null;
  readonly stage: StageNights;
  readonly rooms: RoomsCooling;
  readonly surfaces: readonly SurfaceHint[];
}

export interface WhereToLook {
  /** Every place that could be judged, the one that chance explains least first. */
  readonly places: readonly Look[];
  readonly notes: readonly LooksNote[];
}

/**
 * All places of a stage, on its used nights. Each is one logger in a room of its own size, heating and sun; it can point
 * at a place, and never say what is there.
 */
export function whereToLook(given: ToLook): WhereToLook {
  const nights = usedNights(given.stage, given.record);
  const seen = [
    ...roomsSeen(given, nights),
    ...roomLevelsSeen(given.record, nights),
    ...voidsSeen(given, nights),
    ...moistureSeen(given, nights),
    ...surfacesSeen(given.surfaces),
  ];
  const places = judgedTogether(seen).toSorted((a, b) => leastChance(a) - leastChance(b));
  return { places, notes: notesOn(given, places, nights) };
}

/** Each chance becomes that among all that was asked: of every figure, and of every one in wind. */
function judgedTogether(seen: readonly Sight[]): Look[] {
  const asked = seen.flatMap(({ chance, inWind }) => [chance, inWind?.chance ?? null]);
  const chances = asked.filter((it) => it !== null);
  const adjusted = together(chances)[Symbol.iterator]();
  const next = () => adjusted.next().value ?? 1;
  return seen.map(({ say, ...own }) => {
    const chance = own.chance === null ? null : next();
    const inWind = own.inWind && { ...own.inWind, chance: next() };
    const look = { ...own, chance, inWind };
    const weak = leastChance(own) < STANDS_OUT && leastChance(look) >= STANDS_OUT;
    return {
      ...look,
      notes: [
        ...say(look, weak),
        ...(weak
          ? [{ code: 'look-may-be-chance', chance: leastChance(look), looked: chances.length } as const]
          : []),
      ],
    };
  });
}

function notesOn(
  { house, record }: ToLook,
  places: readonly Look[],
  nights: readonly UsedNight[],
): LooksNote[] {
  if (places.length === 0) return [];
  const found = places.some((place) => standsOut(leastChance(place)));
  const rooms = places.filter(({ kind }) => kind === 'room');
  const winds = nights.flatMap(({ wind }) => wind ?? []);
  const notes: (LooksNote | false)[] = [
    !found && { code: 'look-nothing-stands-out', looked: places.length },
    rooms.length > 0 && { code: 'look-one-logger-each' },
    rooms.length > 0 &&
      rooms.every(({ expected }) => expected === null) &&
      house.elements !== undefined && { code: 'look-rooms-not-named' },
    record.windSpeed === null && { code: 'look-wind-not-logged' },
    record.windSpeed !== null && !windVaries(winds) && { code: 'look-wind-alike' },
  ];
  return notes.filter((note) => note !== false);
}
