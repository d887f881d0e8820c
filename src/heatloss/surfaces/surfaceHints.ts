/** What a logger on a surface tells of the element under it: its local transmittance, read without a heat-flux plate. */
import { standardDeviation } from 'simple-statistics';
import type { Estimate } from '../../assessment.ts';
import type { StageNights } from '../../cooling/index.ts';
import { type Design, type ElementDesign, surfacesOf } from '../../fabric/index.ts';
import type { House, Logger } from '../../house.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import type { HouseRecord, RoomSeries } from '../../series/record.ts';
import { airBothSides } from './airBothSides.ts';
import { averageMethod } from './averageMethod.ts';
import type { SurfaceNote } from './note.ts';
import { steadyBlocks } from './steadyBlocks.ts';

export interface SurfaceHint {
  readonly file: string;
  readonly room: string;
  /** Null where `house.json` does not say what it sits on. */
  readonly element: string | null;
  /** Of the element where the logger sits [W/(m²K)]; null where nothing can be said. */
  readonly transmittance: Estimate | null;
  /** All rules of the average method are kept, and the interval is narrow enough to say something. */
  readonly accepted: boolean;
  /** As drawn [W/(m²K)]. */
  readonly designTransmittance: number | null;
  readonly notes: readonly SurfaceNote[];
}

/**
 * Rsi of a real room about the standard's: the standard's 0.13 is 1 / (5.1 by radiation + 2.5 by convection), and
 * convection at a wall is 1 to 4.5 W/(m²K), which makes it 0.10 to 0.16 (MEMORY). Relative standard deviation.
 */
const SURFACE_RESISTANCE_SD = 0.125;
/** A logger on a surface feels the air as well; how well it lies on is not known. Relative; PRACTICE. */
const CONTACT_SD = 0.1;
/** Air near the wall against the room's logger, and against the house's mean where the room has none [K]. PRACTICE. */
const MIXING_SD = { room: 0.2, house: 0.4 } as const;
/** An interval whose upper end is this many times the lower says nothing. */
const TOO_WIDE = 4;

/** One for each logger on a surface, over the nights of a stage. */
export function surfaceHints(
  house: House,
  record: HouseRecord,
  design: Design | null,
  stage: StageNights,
): SurfaceHint[] {
  return record.rooms
    .filter(({ place }) => place === 'surface')
    .map((surface) => {
      const logger = loggerOf(house, record.rooms, surface);
      const element = design?.elements.find(({ name }) => name === logger?.element) ?? null;
      return {
        file: surface.file,
        room: surface.room,
        element: logger?.element ?? null,
        designTransmittance: element?.transmittance ?? null,
        ...(element === null
          ? nothing({ code: 'surface-without-element' })
          : hintOf({ house, record, stage, surface, element })),
      };
    });
}

/** Two of the same file and name are told apart by their order. */
function loggerOf({ loggers }: House, rooms: readonly RoomSeries[], surface: RoomSeries): Logger | undefined {
  const alike = rooms.filter(
    ({ file, room, place }) => place === 'surface' && file === surface.file && room === surface.room,
  );
  return loggers.filter(
    ({ file, room, place }) =>
      place === 'surface' && file === surface.file && (room ?? file) === surface.room,
  )[alike.indexOf(surface)];
}

interface ToRead {
  readonly house: House;
  readonly record: HouseRecord;
  readonly stage: StageNights;
  readonly surface: RoomSeries;
  readonly element: ElementDesign;
}

type Read = Pick<SurfaceHint, 'transmittance' | 'accepted' | 'notes'>;

const nothing = (why: SurfaceNote, ...notes: readonly SurfaceNote[]): Read => ({
  transmittance: null,
  accepted: false,
  notes: [why, ...notes],
});

function hintOf({ house, record, stage, surface, element }: ToRead): Read {
  const air = airBothSides(house, record, surface, element);
  if (typeof air === 'string') return nothing({ code: air });
  const resistance = insideResistanceOf(house, element);
  const { blocks, capacity, notes } = steadyBlocks({
    house,
    record,
    stage,
    surface,
    element,
    air,
    resistance,
  });
  const said: SurfaceNote[] = air.houseMean
    ? [...notes, { code: 'surface-room-without-logger' }]
    : [...notes];
  if (blocks.length === 0) return nothing({ code: 'surface-no-steady-hours' }, ...said);
  const { transmittance, failed } = averageMethod(blocks, capacity);
  const difference = blocks.reduce((sum, block) => sum + block.difference, 0) / blocks.length;
  const drop = transmittance * difference * resistance;
  if (!(transmittance > 0)) return nothing({ code: 'surface-warmer-than-air', drop }, ...said);
  const loggersSd = Math.hypot(pairSd(record), air.houseMean ? MIXING_SD.house : MIXING_SD.room);
  const own = Math.hypot(
    transmittance * Math.hypot(SURFACE_RESISTANCE_SD, CONTACT_SD),
    loggersSd / (resistance * difference),
  );
  const half = Math.hypot(NORMAL_95 * own, scatterOf(blocks.map((it) => it.heatFlux / it.difference)));
  const estimate = {
    value: transmittance,
    low: Math.max(0, transmittance - half),
    high: transmittance + half,
  };
  const tooWide = estimate.high > TOO_WIDE * estimate.low;
  return {
    transmittance: estimate,
    accepted: failed.length === 0 && !tooWide,
    notes: [
      ...(tooWide ? [{ code: 'surface-too-wide', drop, loggersSd } as const] : []),
      ...failed.map((rule) => ({ code: `surface-rule-${rule}`, blocks: blocks.length }) as const),
      ...said,
      { code: 'surface-resistance-assumed', resistance },
    ],
  };
}

/** Half-width of 95 % of the mean of the blocks by their own scatter; nothing is known of that from one. */
const scatterOf = (each: readonly number[]): number =>
  each.length < 2
    ? 0
    : (studentTQuantile(0.975, each.length - 1) * standardDeviation([...each])) / Math.sqrt(each.length - 1);

/** By the way heat flows through it. */
function insideResistanceOf({ elements }: House, { name, buildUp }: ElementDesign): number {
  const tilt = elements?.find((it) => it.name === name)?.tiltDeg ?? 90;
  return surfacesOf(buildUp?.facing ?? (tilt < 60 ? 'up' : tilt > 120 ? 'down' : 'across'), 'outside').inside;
}

/**
 * What the two loggers of Ti − Tsi may be off [K]: they are like those whose errors are in inside less outside, which
 * average over as many as there are on either side.
 */
function pairSd({ rooms, differenceSd }: HouseRecord): number {
  const inside = rooms.filter(({ place }) => place === 'inside').length;
  const outside = Math.max(1, rooms.filter(({ place }) => place === 'outside').length);
  return inside === 0 ? differenceSd : (Math.SQRT2 * differenceSd) / Math.sqrt(1 / inside + 1 / outside);
}
