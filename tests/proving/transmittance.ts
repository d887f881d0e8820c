/** Transmittances of drawn build-ups: reckoned here on our own, so that design figures have a second opinion. */
import type { HeatFlow, Layer } from '../../src/house.ts';
import { resistanceOf, type SlabLayer } from './conduction.ts';

/** Surface resistances of ISO 6946:2017 table 7 [m²K/W]. */
export const insideResistance: Record<HeatFlow, number> = { up: 0.1, across: 0.13, down: 0.17 };
export const outsideResistance = 0.04;

/** What fills a part of a layer. */
interface Filling {
  readonly fraction: number;
  readonly resistance: number;
}

/**
 * Transmittance [W/(m²K)] by the combined method of ISO 6946:2017 clause 6.7.2: the mean of an upper limit
 * (no heat goes sideways) and a lower one (each layer at one temperature).
 *
 * @param beyond surface resistance of the far face [m²K/W]
 */
export function transmittance(
  layers: readonly Layer[],
  facing: HeatFlow,
  beyond = outsideResistance,
): number {
  const [upper, lower] = limits(layers.map(fillings), insideResistance[facing] + beyond);
  return 2 / (upper + lower);
}

/**
 * The same build-up as even layers that together resist as much as the combined method says: what bridges
 * take away, every bridged layer loses in proportion. Their mass is the mean of what fills them.
 */
export function evenLayers(layers: readonly Layer[], facing: HeatFlow): SlabLayer[] {
  const films = insideResistance[facing] + outsideResistance;
  const filled = layers.map(fillings);
  const [upper, lower] = limits(filled, films);
  let even = 0;
  let bridged = 0;
  for (const parts of filled)
    if (parts.length > 1) bridged += inParallel(parts);
    else even += parts[0].resistance;
  const scale = bridged > 0 ? ((upper + lower) / 2 - films - even) / bridged : 1;
  return layers.map((layer, k) => {
    const resistance = inParallel(filled[k]) * (filled[k].length > 1 ? scale : 1);
    const { thicknessMm, densityKgM3, specificHeatJkgK, bridge } = layer;
    if (thicknessMm === undefined || densityKgM3 === undefined || specificHeatJkgK === undefined)
      return { resistance };
    const thickness = thicknessMm / 1000;
    const solid = { thickness, conductivity: thickness / resistance, specificHeat: specificHeatJkgK };
    if (bridge?.densityKgM3 === undefined || bridge.specificHeatJkgK === undefined)
      return { ...solid, density: densityKgM3 };
    const share = bridgeFraction(layer);
    const heat =
      (1 - share) * densityKgM3 * specificHeatJkgK + share * bridge.densityKgM3 * bridge.specificHeatJkgK;
    return { ...solid, density: heat / specificHeatJkgK };
  });
}

/**
 * Transmittance of a slab on the ground [W/(m²K)], ISO 13370:2017 clause 7.1, with its wall of 0.3 m and
 * ground of 2 W/(mK) (its table 1, category sand or gravel).
 *
 * @param resistance of the floor's layers [m²K/W]
 */
export function slabTransmittance(resistance: number, area: number, perimeter: number): number {
  const ground = 1.5; // clay or silt, ISO 13370:2017 [W/(mK)]
  const width = area / (perimeter / 2);
  const thickness = 0.3 + ground * (insideResistance.down + resistance + outsideResistance);
  return thickness < width
    ? ((2 * ground) / (Math.PI * width + thickness)) * Math.log((Math.PI * width) / thickness + 1)
    : ground / (0.457 * width + thickness);
}

/**
 * Transmittance of a floor over a ventilated space [W/(m²K)], and the share of what leaves it that goes with the
 * space's walls and air rather than into the ground: ISO 13370:2017 clause 7.2, with the floor 0.3 m up, walls of
 * 1.7 W/(m²K), 1500 mm² of openings per metre, 5 m/s and average shelter.
 *
 * @param floor transmittance between room and space [W/(m²K)]
 */
export function suspendedTransmittance(floor: number, area: number, perimeter: number) {
  const ground = 1.5;
  const width = area / (perimeter / 2);
  const thickness = 0.3 + ground * (insideResistance.down + outsideResistance);
  const into = ((2 * ground) / (Math.PI * width + thickness)) * Math.log((Math.PI * width) / thickness + 1);
  const away = (2 * 0.3 * 1.7 + 1450 * 0.0015 * 5 * 0.05) / width;
  return { whole: 1 / (1 / floor + 1 / (into + away)), airShare: away / (into + away) };
}

export const layersResistance = (layers: readonly SlabLayer[]) =>
  layers.reduce((sum, layer) => sum + resistanceOf(layer), 0);

function limits(layers: readonly (readonly Filling[])[], films: number): [number, number] {
  let paths: Filling[] = [{ fraction: 1, resistance: films }];
  let lower = films;
  for (const parts of layers) {
    paths = paths.flatMap((path) =>
      parts.map((part) => ({
        fraction: path.fraction * part.fraction,
        resistance: path.resistance + part.resistance,
      })),
    );
    lower += inParallel(parts);
  }
  return [inParallel(paths), lower];
}

const inParallel = (parts: readonly Filling[]) =>
  1 / parts.reduce((sum, part) => sum + part.fraction / part.resistance, 0);

function fillings(layer: Layer): Filling[] {
  const { bridge, thicknessMm = 0 } = layer;
  const own = ownResistance(layer);
  if (bridge === undefined) return [{ fraction: 1, resistance: own }];
  const fraction = bridgeFraction(layer);
  return [
    { fraction: 1 - fraction, resistance: own },
    { fraction, resistance: thicknessMm / 1000 / bridge.conductivityWmK },
  ];
}

function ownResistance(layer: Layer): number {
  if (layer.resistanceM2KW !== undefined) return layer.resistanceM2KW;
  if (layer.conductivityWmK !== undefined && layer.thicknessMm !== undefined)
    return layer.thicknessMm / 1000 / layer.conductivityWmK;
  throw new RangeError(`the layer "${layer.name}" has neither a conductivity nor a resistance`);
}

function bridgeFraction({ bridge }: Layer): number {
  if (bridge === undefined) return 0;
  if (bridge.fraction !== undefined) return bridge.fraction;
  return (bridge.widthMm ?? 0) / (bridge.spacingMm ?? 1) + (bridge.extraFraction ?? 0);
}
