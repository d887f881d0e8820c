/** How warm a void should be by the design. */
import type { ElementDesign } from '../../fabric/index.ts';
import type { RoomSeries } from '../../series/record.ts';
import type { ToLook } from './whereToLook.ts';

export interface VoidAsDrawn {
  /** Void less outdoors over inside less outdoors [–]. */
  readonly index: number;
  /** One standard deviation [–]. */
  readonly sd: number;
  /** Nobody stated it, so that the usual factor of unheated spaces stands for it. */
  readonly assumed: boolean;
}

/** Of an index that follows from figures stated or drawn: openings and the sky are in none of them. PRACTICE [–]. */
const DRAWN_SD = 0.05;

/**
 * Of the element that the logger names, else of the only one to a void; null where it is not known which. What lies
 * over an element to a void is its temperature factor, and the rest is the void's. Of an element to outdoors whose
 * outermost layer is the void (air, or a resistance stated for roof space and covering) the resistances tell: the air
 * of that layer stands in its middle.
 *
 * @see ISO 13789:2017, 7 (b = (Ti − Tu) / (Ti − Te)); ISO 6946:2017, 6.10 for roof spaces as a layer (MEMORY)
 */
export function voidAsDrawn({ house, design }: ToLook, { file, room }: RoomSeries): VoidAsDrawn | null {
  const logger = house.loggers.find(
    (it) => it.place === 'void' && it.file === file && (it.room ?? it.file) === room,
  );
  const toVoid = design?.elements.filter(({ to }) => to === 'void') ?? [];
  const under =
    design?.elements.find(({ name }) => name === logger?.element) ??
    (toVoid.length === 1 ? toVoid[0] : undefined);
  if (under === undefined) return null;
  if (under.to === 'void') {
    const assumed = under.temperatureFactorSd > 0;
    const sd = assumed ? under.temperatureFactorSd : DRAWN_SD;
    return { index: 1 - under.temperatureFactor, sd, assumed };
  }
  const above = under.to === 'outside' ? resistanceAbove(under) : null;
  return above === null || under.transmittance === null
    ? null
    : { index: under.transmittance * above, sd: DRAWN_SD, assumed: false };
}

/** From the middle of the outermost layer to the air outdoors [m²K/W]; null where that layer is no void. */
function resistanceAbove({ buildUp, transmission }: ElementDesign): number | null {
  const last = buildUp?.layers.at(-1);
  if (last?.kind === 'air' && last.ventilation === 'ventilated') return 0;
  if (last?.kind !== 'stated' || transmission === null) return null;
  return last.resistance / 2 + OUTER_SURFACE;
}

/** Rse [m²K/W]. ISO 6946:2017, Table 7. */
const OUTER_SURFACE = 0.04;
