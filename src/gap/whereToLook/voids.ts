/** How warm each void is between outdoors and the house, against what is drawn, and in wind. */
import { mean, standardDeviation } from 'simple-statistics';
import type { Estimate } from '../../assessment.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import type { RoomSeries } from '../../series/record.ts';
import { chanceOf } from './chance.ts';
import { goesWithWind } from './inWind.ts';
import { type InWind, type Look, type Sight, standsOut, windOf } from './look.ts';
import { loggerSd, meanOver, type UsedNight } from './nights.ts';
import type { LookNote } from './note.ts';
import { type VoidAsDrawn, voidAsDrawn } from './voidDesign.ts';
import type { ToLook } from './whereToLook.ts';

/** Fewer say nothing of a void. */
export const FEWEST_NIGHTS = 3;

interface VoidNight {
  readonly index: number;
  /** Inside less outdoors [K]. */
  readonly difference: number;
  readonly wind: number | null;
}

/** One for each void logger that was read through enough of the used nights. */
export function voidsSeen(given: ToLook, nights: readonly UsedNight[]): Sight[] {
  return given.record.rooms
    .filter(({ place }) => place === 'void')
    .flatMap((series) => voidSeen(given, series, nights) ?? []);
}

function voidSeen(given: ToLook, series: RoomSeries, used: readonly UsedNight[]): Sight | null {
  const { insideTemperature: inside, outsideTemperature: outside } = given.record;
  const nights = used.flatMap(({ window, wind }): VoidNight[] => {
    const above = meanOver(window, (i) => series.temperature[i] - outside[i]);
    const difference = meanOver(window, (i) => inside[i] - outside[i]);
    return above === null || difference === null || difference <= 0
      ? []
      : [{ index: above / difference, difference, wind }];
  });
  if (nights.length < FEWEST_NIGHTS) return null;
  const each = nights.map(({ index }) => index);
  const value = mean(each);
  const freedom = nights.length - 1;
  const se = Math.max(LEAST_SE, standardDeviation(each) / Math.sqrt(freedom));
  const pairSd = (Math.SQRT2 * loggerSd(given.record)) / mean(nights.map(({ difference }) => difference));
  const half = Math.hypot(studentTQuantile(0.975, freedom) * se, NORMAL_95 * pairSd);
  const drawn = voidAsDrawn(given, series);
  return {
    place: series.room,
    file: series.file,
    kind: 'void',
    figure: { value, low: value - half, high: value + half },
    expected: drawn && rangeOf(drawn),
    inWind: inWindOf(nights, pairSd),
    chance: drawn && chanceOf(value - drawn.index, se, freedom, Math.hypot(pairSd, drawn.sd)),
    say: (look) => notesOf(look, drawn?.assumed ?? false),
  };
}

/** What an index does from calm to windy by sky and sun alone; one sd [–]. PRACTICE. */
const ORDINARY_IN_WIND = 0.02;
/** No void is as even as that from night to night [–]. */
const LEAST_SE = 0.001;

/** Within nothing and all. */
const rangeOf = ({ index, sd }: VoidAsDrawn): Estimate => ({
  value: index,
  low: Math.max(0, index - NORMAL_95 * sd),
  high: Math.min(1, index + NORMAL_95 * sd),
});

/**
 * Outdoor air that blows through brings a void to outdoors from either side, and from below after clear, calm nights:
 * only one that rises in wind *and* then stands above outdoors gets warm air. Both must hold, so the larger chance
 * counts.
 */
function inWindOf(nights: readonly VoidNight[], pairSd: number): InWind | null {
  const line = goesWithWind(
    nights.flatMap(({ wind, index }) => (wind === null ? [] : [{ wind, value: index }])),
  );
  if (line === null) return null;
  const { change, se, degreesOfFreedom, whenWindy, whenWindySe, calm, windy } = line;
  const rises = chanceOf(change.value, se, degreesOfFreedom, ORDINARY_IN_WIND);
  const above = chanceOf(whenWindy, whenWindySe, degreesOfFreedom, pairSd);
  return { change, calm, windy, nights: line.nights, chance: Math.max(rises, above) };
}

function notesOf(
  { place, figure, expected, inWind, chance }: Omit<Look, 'notes'>,
  assumed: boolean,
): LookNote[] {
  const notes: LookNote[] = [];
  if (expected !== null && chance !== null && standsOut(chance))
    notes.push({ code: 'look-void-warm', place, index: figure, expected, assumed, chance });
  if (inWind !== null && standsOut(inWind.chance))
    notes.push({ code: 'look-void-warms-in-wind', place, ...windOf(inWind) });
  if (inWind !== null && inWind.change.high < 0 && figure.value > 0) {
    const { change, calm, windy } = inWind;
    notes.push({ code: 'look-void-aired', place, change, calm, windy });
  }
  return notes;
}
