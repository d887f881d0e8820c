/**
 * The border: build-ups of `house.json`, in millimetres and kilojoules, to SI. Nothing else in this room
 * converts.
 */
import type { Bridge, DesignElement, House, Layer, Partition } from '../house.ts';
import type { BuildUp, BuildUpLayer, LayerBridge } from './buildUp.ts';
import type { CorrectionsAsked } from './corrections.ts';

const fromMm = (length: number) => length / 1e3;
const fromMm2 = (area: number) => area / 1e6;
const fromKJ = (energy: number) => energy * 1e3;

/** Heat is taken to flow across where the build-up does not say. */
export function buildUpFrom({ facing = 'across', layers }: Partition['buildUp']): BuildUp {
  return { facing, layers: layers.map(layerFrom) };
}

export function correctionsFrom({ airGapLevel = 0, fasteners }: DesignElement): CorrectionsAsked {
  if (fasteners === undefined) return { airGapLevel, fasteners: null };
  const { perM2, areaMm2, conductivityWmK } = fasteners;
  return { airGapLevel, fasteners: { count: perM2, area: fromMm2(areaMm2), conductivity: conductivityWmK } };
}

/** Heat capacity that the house states outright [J/K]; null when it does not. */
export function statedHeatCapacity({ heatCapacity, floorAreaM2 }: House): number | null {
  if (heatCapacity === undefined || floorAreaM2 === undefined) return null;
  return fromKJ(heatCapacity.kJPerM2K) * floorAreaM2;
}

function layerFrom(layer: Layer): BuildUpLayer {
  const { name, thicknessMm, conductivityWmK, resistanceM2KW, air } = layer;
  const bridge = layer.bridge === undefined ? null : bridgeFrom(layer.bridge);
  const thickness = thicknessMm === undefined ? null : fromMm(thicknessMm);
  const mass = { density: layer.densityKgM3 ?? null, specificHeat: layer.specificHeatJkgK ?? null };
  if (resistanceM2KW !== undefined)
    return { kind: 'stated', name, resistance: resistanceM2KW, thickness, ...mass, bridge };
  if (thickness === null) throw new RangeError(`the layer "${name}" has no thickness`);
  if (air !== undefined) {
    const opening = layer.openingMm2PerM === undefined ? null : fromMm2(layer.openingMm2PerM);
    return { kind: 'air', name, thickness, ventilation: air, opening, bridge };
  }
  if (conductivityWmK === undefined) throw new RangeError(`the layer "${name}" states no resistance`);
  return { kind: 'solid', name, thickness, conductivity: conductivityWmK, ...mass, bridge };
}

/** Timbers by width and centres, with plates and noggins beside them, or the fraction outright. */
function bridgeFrom(bridge: Bridge): LayerBridge {
  const { widthMm = 0, spacingMm = Infinity, extraFraction = 0 } = bridge;
  return {
    name: bridge.name,
    fraction: bridge.fraction ?? widthMm / spacingMm + extraFraction,
    conductivity: bridge.conductivityWmK,
    density: bridge.densityKgM3 ?? null,
    specificHeat: bridge.specificHeatJkgK ?? null,
  };
}
