/** The temperature that a house cools towards: outdoors, and where it adjoins a heated neighbour, a share of that. */
import type { HouseRecord } from '../series/record.ts';
import { weightedMean } from '../series/weightedMean.ts';

/** What lies behind the elements that do not face outdoors. */
export interface Neighbour {
  /** Its share of all U·A, 0 to 1 [–]. */
  readonly weight: number;
  /** Where it has no logger, its temperature as stated [°C]; null when nobody knows it. */
  readonly temperature: number | null;
}

/**
 * The weighted mean of outdoors and the neighbour, by the loggers laid there, else by what was stated; outdoors
 * alone where nothing is known of a neighbour. With it, a time constant is heat capacity over *all* losses, those to
 * the neighbour included.
 *
 * @returns one value per cell [°C], NaN where either is missing
 */
export function driverOf(
  { rooms, outsideTemperature }: Pick<HouseRecord, 'rooms' | 'outsideTemperature'>,
  neighbour: Neighbour | null,
): Float64Array {
  if (neighbour === null || neighbour.weight === 0) return outsideTemperature;
  const { weight, temperature } = neighbour;
  const loggers = rooms.filter(({ place }) => place === 'adjacent').map((room) => room.temperature);
  if (loggers.length === 0 && temperature === null) return outsideTemperature;
  const beside =
    loggers.length === 0
      ? null
      : weightedMean(
          loggers,
          loggers.map(() => 1),
        );
  return outsideTemperature.map(
    (outside, i) => (1 - weight) * outside + weight * (beside === null ? (temperature ?? 0) : beside[i]),
  );
}

/** Short gaps of the driver bridged by straight lines, its ends held; the readings fitted are never bridged. */
export function bridgeGaps(values: Float64Array): Float64Array {
  const out = values.slice();
  let before = -1;
  for (let i = 0; i < out.length; i++) {
    if (Number.isNaN(out[i])) continue;
    for (let k = before + 1; k < i; k++)
      out[k] = before < 0 ? out[i] : out[before] + ((out[i] - out[before]) * (k - before)) / (i - before);
    before = i;
  }
  for (let k = before + 1; k < out.length; k++) out[k] = out[before];
  return out;
}
