/** Which air goes where in one step. */
import { airChangesPerHour, type Leakage } from './leakage.ts';
import type { Model } from './model.ts';

export interface Airflow {
  /** Into each zone from outside [m³/s]. */
  readonly fromOutside: Float64Array;
  /** From zone a into zone b at `a * zones + b` [m³/s]. */
  readonly between: Float64Array;
}

export const noAirflow = (zones: number): Airflow => ({
  fromOutside: new Float64Array(zones),
  between: new Float64Array(zones * zones),
});

/**
 * Fills `flow` from the last step's temperatures; as much air leaves a zone as enters it.
 *
 * @param temperature of each zone [°C]
 * @param windSpeed   at 10 m over open land [m/s]
 * @param factor      on the leakage, for doors in use
 * @returns the leakage of the heated zones [air changes per hour]
 */
export function moveAir(
  flow: Airflow,
  model: Model,
  leakage: Leakage,
  temperature: Float64Array,
  outsideTemperature: number,
  windSpeed: number,
  factor: number,
): number {
  const { zones, heatedZones, exchanges } = model;
  const n = zones.length;
  let volume = 0;
  let weighted = 0;
  for (const z of heatedZones) {
    volume += zones[z].volume;
    weighted += zones[z].volume * temperature[z];
  }
  const changes = factor * airChangesPerHour(leakage, weighted / volume - outsideTemperature, windSpeed);
  const total = (changes * volume) / 3600;
  flow.between.fill(0);
  zones.forEach((zone, z) => {
    flow.fromOutside[z] =
      zone.inletShare * total + ((zone.vents.steady + zone.vents.wind * windSpeed) * zone.volume) / 3600;
    let through = flow.fromOutside[z];
    for (let from = 0; from < z; from++) through += flow.between[from * n + z];
    for (const { zone: to, share } of zone.passesTo) {
      const open = heatedZones.includes(to) ? 1 : leakage.intoVoid;
      flow.between[z * n + to] = through * share * open;
    }
  });
  for (const { lower, upper, steady, buoyant } of exchanges) {
    const both = steady + buoyant * Math.sqrt(Math.max(0, temperature[lower] - temperature[upper]));
    flow.between[lower * n + upper] += both;
    flow.between[upper * n + lower] += both;
  }
  return changes;
}
