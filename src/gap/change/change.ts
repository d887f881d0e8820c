/** What a change between two stages comes to, beyond the ratio: in W/K, air, a year's heat; and what could be seen. */
import type { Estimate } from '../../assessment.ts';
import { missingFromOne, type StageNights } from '../../cooling/index.ts';
import { type DegreeDays, type Design, heatDemand } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import type { HouseRecord } from '../../series/record.ts';
import { climateOf } from '../climate.ts';
import { scaled } from '../intervals.ts';
import { airChangesOf, type Leakable } from './airChanges.ts';
import {
  jointDoubt,
  jointDoubtWith,
  type NightsToShow,
  nightsToShow,
  plainDoubt,
  plainDoubtWith,
  smallestChange,
} from './detectable.ts';
import { heatLossDifference } from './difference.ts';
import type { ChangeNote } from './notes.ts';
import type { Side } from './shared.ts';
import { type StageWeather, weatherApart, weatherOf } from './weather.ts';

export interface ComparedSide extends Side {
  readonly stage: StageNights;
  /** [W/K]; null where the stage has no figure */
  readonly heatLoss: Estimate | null;
}

export interface Comparing {
  readonly house: House;
  readonly design: Design | null;
  readonly record: HouseRecord;
  readonly before: ComparedSide;
  readonly after: ComparedSide;
  /** Heat loss after / before; null where nothing compares them. */
  readonly ratio: Estimate | null;
  /** By one network for both. */
  readonly joint: boolean;
}

/** Every difference is after less before: negative where the house loses less, as the ratio is then below 1. */
export interface Change {
  /** [W/K] */
  readonly heatLossDifference: Estimate | null;
  /** If all of it were leakage. */
  readonly airChangesPerHour: Estimate | null;
  /** Over a standard year of the place [J]. */
  readonly heatPerYear: Estimate | null;
  readonly degreeDays: DegreeDays | null;
  readonly weather: { readonly before: StageWeather; readonly after: StageWeather };
  /** The least fall that these nights would have shown [–]. */
  readonly smallestChange: number | null;
  /** Null where the scatter of the nights is not known. */
  readonly nightsToShow: readonly NightsToShow[] | null;
  readonly notes: readonly ChangeNote[];
}

export function changeOf(comparing: Comparing): Change {
  const { house, record, before, after, ratio } = comparing;
  const weather = { before: weatherOf(record, before.nights), after: weatherOf(record, after.nights) };
  const year = climateOf(house)?.year ?? null;
  const shown = { degreeDays: year, weather };
  if (ratio === null) {
    const names = [before, after].filter(({ pooled }) => pooled === null).map(({ stage }) => stage.name);
    return { ...nothing, ...shown, notes: [{ code: 'side-without-nights', names }] };
  }
  const difference = differenceOf(comparing, ratio);
  const air = difference && leakageOf(comparing, difference);
  const detectable = detectableOf(comparing, ratio);
  return {
    ...shown,
    heatLossDifference: difference,
    airChangesPerHour: air?.airChangesPerHour ?? null,
    heatPerYear: difference && year && scaled(difference, heatDemand(1, year)),
    smallestChange: detectable.least,
    nightsToShow: detectable.plan,
    notes: [
      ...apartNotes(weather),
      ...(difference === null ? [withoutDifference(comparing)] : differenceNotes(comparing, air, year)),
      {
        code: 'smallest-change',
        change: detectable.least,
        nights: [weather.before.nights, weather.after.nights],
      },
      ...(detectable.plan === null ? [] : [{ code: 'nights-to-show', plan: detectable.plan } as const]),
    ],
  };
}

const nothing = {
  heatLossDifference: null,
  airChangesPerHour: null,
  heatPerYear: null,
  smallestChange: null,
  nightsToShow: null,
};

const differing = ({ before, after }: Comparing): string[] => missingFromOne(before.stage, after.stage);
const sameElements = (comparing: Comparing) => differing(comparing).length === 0;

/** A plain ratio of time constants tells nothing of watts where the mass may differ. */
function differenceOf(comparing: Comparing, ratio: Estimate): Estimate | null {
  const { before, after, joint } = comparing;
  if (!joint && !sameElements(comparing)) return null;
  return heatLossDifference(ratio, before.heatLoss, after.heatLoss);
}

const withoutDifference = (comparing: Comparing): ChangeNote => ({
  code: comparing.joint || sameElements(comparing) ? 'no-difference-without-watts' : 'no-difference-for-mass',
});

/** Null without a volume, and where elements came or went: then it is not leakage alone. */
function leakageOf(comparing: Comparing, difference: Estimate): Leakable | null {
  const { house, design, before, after } = comparing;
  if (house.volumeM3 === undefined || !sameElements(comparing)) return null;
  const ranges = before.stage.missing.length === 0 ? design?.ranges : undefined;
  const fabric = ranges?.fabric ? Math.max(0, ranges.fabric.low + ranges.bridges.low) : 0;
  return airChangesOf(difference, { before: before.heatLoss, after: after.heatLoss }, fabric, house.volumeM3);
}

const differenceNotes = (
  comparing: Comparing,
  air: Leakable | null,
  year: DegreeDays | null,
): readonly ChangeNote[] => [
  airNote(comparing, air),
  year === null
    ? { code: 'no-degree-days' }
    : { code: 'change-over-standard-year', degreeDays: year.degreeDays, base: year.baseTemperature },
];

function airNote(comparing: Comparing, air: Leakable | null): ChangeNote {
  if (comparing.house.volumeM3 === undefined) return { code: 'no-volume' };
  if (air === null) return { code: 'not-leakage-alone', names: differing(comparing) };
  if (air.airChangesPerHour === null) return { code: 'no-room-for-leakage' };
  return { code: air.cut ? 'air-changes-cut' : 'air-changes-if-leakage' };
}

function detectableOf({ before, after, joint }: Comparing, ratio: Estimate) {
  const pools =
    before.pooled !== null && after.pooled !== null ? ([before.pooled, after.pooled] as const) : null;
  if (joint || pools === null)
    return {
      least: smallestChange(jointDoubt(ratio)),
      plan: pools && nightsToShow(jointDoubtWith(ratio, ...pools)),
    };
  return {
    least: smallestChange(plainDoubt(...pools)),
    plan: nightsToShow(plainDoubtWith(...pools)),
  };
}

function apartNotes(weather: Change['weather']): ChangeNote[] {
  const { difference, windSpeed } = weatherApart(weather.before, weather.after);
  const notes: ChangeNote[] = [];
  if (difference !== null)
    notes.push({ code: 'difference-apart', before: difference[0], after: difference[1] });
  if (windSpeed !== null) notes.push({ code: 'wind-apart', before: windSpeed[0], after: windSpeed[1] });
  return notes;
}
