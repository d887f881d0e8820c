/** Edits of the layers of an element. Each changes the house that it is given. */
import { bridgeOf, layerOf, type Material, materialNamed } from '../../src/fabric/index.ts';
import type { Bridge, DesignElement, House, Layer } from '../../src/house.ts';
import { elementAt, firstLayer } from './elementEdits.ts';

/** An element or a partition by its place in the house, a layer by its place from inside. */
export interface LayerPlace {
  readonly of: 'elements' | 'partitions';
  readonly part: number;
  readonly layer: number;
}

/** Of a layer, so that letters typed into one of its fields are one edit. */
export const nameOf = ({ of, part, layer }: LayerPlace) => `${of} ${part} layer ${layer}`;

export type BuildUpEntry = NonNullable<DesignElement['buildUp']>;

/** How a layer resists heat. */
export type Resisting = 'conductivity' | 'resistance' | 'unventilated' | 'slightly' | 'ventilated';

export const resistingOf = ({ air, resistanceM2KW }: Layer): Resisting =>
  air ?? (resistanceM2KW === undefined ? 'conductivity' : 'resistance');

/** Layers instead of the U-value that was known alone. */
export function giveLayers(house: House, at: number): void {
  const element = elementAt(house, at);
  element.buildUp = { layers: [firstLayer()] };
  delete element.uValue;
}

/** A key that is undefined is left out from then on. */
export function changeLayer(house: House, at: LayerPlace, change: Partial<Layer>): void {
  Object.assign(layerAt(house, at), change);
}

export function changeBridge(house: House, at: LayerPlace, change: Partial<Bridge>): void {
  const { bridge } = layerAt(house, at);
  if (bridge !== undefined) Object.assign(bridge, change);
}

export const insertLayer = (house: House, at: LayerPlace) =>
  layersAt(house, at).splice(at.layer + 1, 0, firstLayer());

export const duplicateLayer = (house: House, at: LayerPlace) =>
  layersAt(house, at).splice(at.layer + 1, 0, structuredClone(layerAt(house, at)));

export function removeLayer(house: House, at: LayerPlace): void {
  endFrame(layersAt(house, at), at.layer);
  layersAt(house, at).splice(at.layer, 1);
}

/** @param by 1 further out, -1 further in; at the end it stays */
export function moveLayer(house: House, at: LayerPlace, by: 1 | -1): void {
  const layers = layersAt(house, at);
  const { layer } = at;
  if (layers[layer + by] === undefined) return;
  const [inner, outer] = by === 1 ? [layer, layer + 1] : [layer - 1, layer];
  const [first, second] = [layers[inner].bridge, layers[outer].bridge];
  layers.splice(inner, 2, layers[outer], layers[inner]);
  // Whichever comes first of two that share their members is the one that begins them.
  if (first === undefined || second?.continues !== true) return;
  if (!first.continues) delete second.continues;
  first.continues = true;
}

/** Another material in the same place: thickness and timbers stay where the material allows them. */
export function putMaterial(house: House, at: LayerPlace, material: Material): void {
  const before = layerAt(house, at);
  const after = layerOf(material, before.thicknessMm ?? USUAL_THICKNESS);
  const bridged = after.thicknessMm !== undefined && after.air !== 'ventilated';
  if (!bridged) endFrame(layersAt(house, at), at.layer);
  layersAt(house, at)[at.layer] =
    before.bridge !== undefined && bridged ? { ...after, bridge: before.bridge } : after;
}

/** Taken until the layer's own figures are typed. */
const USUAL_THICKNESS = 100; // [mm]
const USUAL_CONDUCTIVITY = 0.04; // [W/(mK)], of an insulation
const USUAL_RESISTANCE = 0.18; // [m²K/W], of a still air space

/** The layer resists in another way; figures of the way before are left behind. */
export function resistBy(house: House, at: LayerPlace, way: Resisting): void {
  const layer = layerAt(house, at);
  const { conductivityWmK, resistanceM2KW, thicknessMm } = layer;
  delete layer.air;
  delete layer.conductivityWmK;
  delete layer.resistanceM2KW;
  if (way === 'resistance') {
    const known = conductivityWmK !== undefined && thicknessMm !== undefined;
    const resistance = known ? thicknessMm / 1000 / conductivityWmK : USUAL_RESISTANCE;
    layer.resistanceM2KW = Number(resistance.toPrecision(4));
  } else {
    layer.thicknessMm = thicknessMm ?? USUAL_THICKNESS;
    if (way === 'conductivity') {
      const conductivity = resistanceM2KW ? layer.thicknessMm / 1000 / resistanceM2KW : USUAL_CONDUCTIVITY;
      layer.conductivityWmK = Number(conductivity.toPrecision(4));
    } else layer.air = way;
  }
  if (layer.air === undefined)
    for (const key of ['openingMm2PerM', 'widthMm', 'emissivity'] as const) delete layer[key];
  else
    for (const key of ['densityKgM3', 'specificHeatJkgK', 'vapourResistance', 'sdM'] as const)
      delete layer[key];
  if (layer.air !== 'slightly') delete layer.openingMm2PerM;
  if (layer.air !== 'ventilated') return;
  endFrame(layersAt(house, at), at.layer);
  delete layer.bridge;
}

/** Softwood of the usual size through the layer. */
export function putTimbers(house: House, at: LayerPlace): void {
  const softwood = materialNamed('softwood');
  if (softwood.kind !== 'solid') throw new RangeError('softwood is solid');
  const layer = layerAt(house, at);
  layer.bridge = bridgeOf(softwood, { name: 'timbers', widthMm: 47, spacingMm: 450 });
}

export function takeTimbersOut(house: House, at: LayerPlace): void {
  const layers = layersAt(house, at);
  endFrame(layers, at.layer);
  delete layers[at.layer].bridge;
}

/** Before a layer loses its members: those that went on from them begin there, instead of going on from others. */
function endFrame(layers: readonly Layer[], at: number): void {
  const { bridge } = layers[at];
  if (bridge === undefined || bridge.continues) return;
  delete layers.slice(at + 1).find((it) => it.bridge !== undefined)?.bridge?.continues;
}

/** By width and centres instead of a share outright, and the other way round. */
export function measureTimbers(house: House, at: LayerPlace, by: 'centres' | 'share'): void {
  const { bridge } = layerAt(house, at);
  if (bridge === undefined) return;
  const { fraction, widthMm = 47, spacingMm = 450, extraFraction = 0 } = bridge;
  for (const key of ['fraction', 'widthMm', 'spacingMm', 'extraFraction'] as const) delete bridge[key];
  if (by === 'share')
    bridge.fraction = Number((fraction ?? widthMm / spacingMm + extraFraction).toPrecision(4));
  else Object.assign(bridge, { widthMm: 47, spacingMm: Math.round(47 / Math.max(fraction ?? 0.1, 0.02)) });
}

/** @throws RangeError when there is none */
export function layerAt(house: House, at: LayerPlace): Layer {
  const found = layersAt(house, at)[at.layer];
  if (found === undefined) throw new RangeError(`there is no layer ${at.layer} in ${at.of} ${at.part}`);
  return found;
}

/** @throws RangeError when what stands there has none */
export function buildUpAt(house: House, { of, part }: Omit<LayerPlace, 'layer'>): BuildUpEntry {
  const buildUp = house[of]?.[part]?.buildUp;
  if (buildUp === undefined) throw new RangeError(`there are no layers in ${of} ${part}`);
  return buildUp;
}

const layersAt = (house: House, at: LayerPlace): Layer[] => buildUpAt(house, at).layers;
