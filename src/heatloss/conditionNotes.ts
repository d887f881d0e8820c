/** What the house's own conditions say beside any heat loss: gains that cannot be, and mass that dries. */
import type { House } from '../house.ts';
import type { HouseRecord } from '../series/record.ts';
import { stillDrying, type VapourExcess } from './drying.ts';
import type { HeatLossNote } from './estimate.ts';

/** @param vapour null where humidity was not logged */
export function dryingNotes(house: House, vapour: VapourExcess | null): HeatLossNote[] {
  const told = stillDrying(house);
  return [
    ...(told ? [{ code: 'still-drying', weeks: house.conditions?.wetTradesWithinWeeks ?? 0 } as const] : []),
    ...(vapour !== null && (told || vapour.unusual)
      ? [{ code: 'vapour-excess', ...vapour, told } as const]
      : []),
  ];
}

/**
 * Constant gains that alone would hold the house warmer than it was.
 *
 * @param heatLossAsDrawn with its vents as they were [W/K]; null when it is not known
 * @param difference      mean inside less outside [K], NaN where it is not known
 */
export function gainsNotes(
  { constantGainsW: gains = 0 }: House,
  heatLossAsDrawn: number | null,
  difference: number,
): HeatLossNote[] {
  const lost = (heatLossAsDrawn ?? Number.NaN) * difference;
  return lost > 0 && gains > lost ? [{ code: 'gains-beyond-house', gains, lost }] : [];
}

/**
 * Inside less outside over a stage [K]; where nothing was logged inside by the constant that the house states, and NaN
 * where neither is known.
 *
 * @param stage instants [s]
 */
export function differenceOver(
  { grid, insideTemperature, outsideTemperature }: HouseRecord,
  stage: { readonly from: number; readonly to: number },
  { conditions }: House,
): number {
  const stated = insideTemperature.every(Number.isNaN) ? conditions?.insideC : undefined;
  let sum = 0;
  let count = 0;
  insideTemperature.forEach((inside, k) => {
    const at = grid.start + k * grid.step;
    const apart = (stated ?? inside) - outsideTemperature[k];
    if (at < stage.from || at > stage.to || Number.isNaN(apart)) return;
    sum += apart;
    count++;
  });
  return sum / count;
}
