/** Surfaces that are colder than drawn, by the transmittance that their loggers tell. */

import { temperatureFactorOfPlane } from '../../air/index.ts';
import type { Estimate } from '../../assessment.ts';
import type { SurfaceHint } from '../../heatloss/index.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { chanceAbove } from './chance.ts';
import { type Sight, standsOut } from './look.ts';

/** Elements stray from the drawing, place by place; relative standard deviation. PRACTICE. */
const STRAYS = 0.1;

/** One for each surface logger whose reading is accepted and whose element has a transmittance as drawn. */
export const surfacesSeen = (hints: readonly SurfaceHint[]): Sight[] =>
  hints.flatMap((hint) => surfaceSeen(hint) ?? []);

function surfaceSeen(hint: SurfaceHint): Sight | null {
  const { file, room, element, transmittance, designTransmittance: drawn, accepted } = hint;
  const resistance = hint.notes.find(({ code }) => code === 'surface-resistance-assumed');
  if (!accepted || transmittance === null || drawn === null || element === null) return null;
  if (resistance?.code !== 'surface-resistance-assumed') return null;
  const factorOf = (it: Estimate): Estimate => ({
    value: temperatureFactorOfPlane(it.value, resistance.resistance),
    low: temperatureFactorOfPlane(it.high, resistance.resistance),
    high: temperatureFactorOfPlane(it.low, resistance.resistance),
  });
  const sd = Math.hypot((transmittance.high - transmittance.value) / NORMAL_95, STRAYS * drawn);
  const reach = NORMAL_95 * STRAYS * drawn;
  const expected = factorOf({ value: drawn, low: drawn - reach, high: drawn + reach });
  const figure = factorOf(transmittance);
  return {
    place: room,
    file,
    kind: 'surface',
    figure,
    expected,
    inWind: null,
    chance: chanceAbove((transmittance.value - drawn) / sd, Number.POSITIVE_INFINITY),
    say: ({ chance }) =>
      chance !== null && standsOut(chance)
        ? [{ code: 'look-surface-cold', place: room, element, factor: figure, expected, chance }]
        : [],
  };
}
