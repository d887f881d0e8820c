/** The planes of a build-up where vapour may condense: between its layers, and within thick insulation. */
import type { MoistureSection } from './layers.ts';

export interface Plane {
  /** The layers that it lies between, by position; the same one twice within a layer, one end at a surface. */
  readonly inner: number;
  readonly outer: number;
  /** From the air inside up to here [m²K/W]. */
  readonly resistance: number;
  /** From the inside surface up to here [m of still air]. */
  readonly vapourThickness: number;
}

/** Layers that resist more are cut into equal strips of at most this [m²K/W]. ISO 13788:2012, clause 6 (MEMORY). */
const thickestStrip = 0.25;

/** Both surfaces and every plane between, from inside to outside. */
export function planesOf({ layers, surfaces }: MoistureSection): Plane[] {
  let resistance = surfaces.inside;
  let vapourThickness = 0;
  const planes: Plane[] = [{ inner: 0, outer: 0, resistance, vapourThickness }];
  layers.forEach((layer, i) => {
    // A hair above a whole number of strips is rounding, not another strip.
    const strips = Math.max(1, Math.ceil(layer.resistance / thickestStrip - 1e-9));
    for (let strip = 1; strip <= strips; strip++) {
      resistance += layer.resistance / strips;
      vapourThickness += layer.vapourThickness / strips;
      const outer = strip === strips ? Math.min(i + 1, layers.length - 1) : i;
      planes.push({ inner: i, outer, resistance, vapourThickness });
    }
  });
  return planes;
}

/** From air to air [m²K/W]. */
export function totalResistance(planes: readonly Plane[], { surfaces }: MoistureSection): number {
  return planes[planes.length - 1].resistance + surfaces.outside;
}

/** Temperature at a plane [°C] when nothing changes. */
export function temperatureAt(
  { resistance }: Plane,
  whole: number,
  insideTemperature: number,
  outsideTemperature: number,
): number {
  return insideTemperature - (resistance / whole) * (insideTemperature - outsideTemperature);
}
