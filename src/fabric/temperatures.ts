/** How warm a build-up is at each of its boundaries. */
import type { Limits } from './combinedMethod.ts';

/** Temperatures [°C], one more than there are layers: inside face, between the layers, outside face. */
export type BoundaryTemperatures = readonly number[];

export interface TemperaturesThrough {
  /** Over each layer as a whole, its bridge blended in. */
  readonly mean: BoundaryTemperatures;
  /** Along each section, as if heat went straight through; in the order of the sections. */
  readonly sections: readonly BoundaryTemperatures[];
}

/**
 * Steady temperatures at each boundary, for the layers that count in a case of the transmittance.
 *
 * @param insideTemperature  of the air [°C]
 * @param outsideTemperature [°C]
 * @see ISO 6946:2017, ISO 13788:2012, 4.5: the temperature falls with the resistance passed
 */
export function temperaturesThrough(
  { surfaces, layers, sections }: Limits,
  insideTemperature: number,
  outsideTemperature: number,
): TemperaturesThrough {
  const along = (resistances: readonly number[]) => {
    const flow =
      (insideTemperature - outsideTemperature) /
      (surfaces.inside + resistances.reduce((a, b) => a + b, 0) + surfaces.outside);
    const temperatures = [insideTemperature - flow * surfaces.inside];
    for (const resistance of resistances)
      temperatures.push(temperatures[temperatures.length - 1] - flow * resistance);
    return temperatures;
  };
  return { mean: along(layers), sections: sections.map((section) => along(section.layers)) };
}
