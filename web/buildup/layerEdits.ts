/** Edits of the layers of an element. Each changes the house that it is given. */
import { bridgeOf, layerOf, type Material, materialNamed } from '../../src/fabric/index.ts';
import type { Bridge, DesignElement, House, Layer } from '../../src/house.ts';
import { elementAt, firstLayer } from './elementEdits.ts';

/** An element by its place in the house, a layer by its place from inside. */
export interface LayerPlace {
  readonly element: number;
  readonly layer: number;
}

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

export const insertLayer = (house: House, { element, layer }: LayerPlace) =>
  layersAt(house, element).splice(layer + 1, 0, firstLayer());

export const duplicateLayer = (house: House, { element, layer }: LayerPlace) =>
  layersAt(house, element).splice(layer + 1, 0, structuredClone(layerAt(house, { element, layer })));

export function removeLayer(house: House, { element, layer }: LayerPlace): void {
  layersAt(house, element).splice(layer, 1);
}

/** @param by 1 further out, -1 further in; at the end it stays */
export function moveLayer(house: House, { element, layer }: LayerPlace, by: 1 | -1): void {
  const layers = layersAt(house, element);
  if (layers[layer + by] === undefined) return;
  layers.splice(layer + by, 0, ...layers.splice(layer, 1));
}

/** Another material in the same place: thickness and timbers stay where the material allows them. */
export function putMaterial(house: House, at: LayerPlace, material: Material): void {
  const before = layerAt(house, at);
  const after = layerOf(material, before.thicknessMm ?? USUAL_THICKNESS);
  const bridged = after.thicknessMm !== undefined && after.air !== 'ventilated';
  layersAt(house, at.element)[at.layer] =
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
  if (layer.air === 'ventilated') delete layer.bridge;
}

/** Softwood of the usual size through the layer. */
export function putTimbers(house: House, at: LayerPlace): void {
  const softwood = materialNamed('softwood');
  if (softwood.kind !== 'solid') throw new RangeError('softwood is solid');
  const layer = layerAt(house, at);
  layer.bridge = bridgeOf(softwood, { name: 'timbers', widthMm: 47, spacingMm: 450 });
}

/** Timbers further out that went on from these stand for themselves then. */
export function takeTimbersOut(house: House, { element, layer }: LayerPlace): void {
  const layers = layersAt(house, element);
  delete layers[layer].bridge;
  const first = layers.find(({ bridge }) => bridge !== undefined);
  delete first?.bridge?.continues;
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
export function layerAt(house: House, { element, layer }: LayerPlace): Layer {
  const found = layersAt(house, element)[layer];
  if (found === undefined) throw new RangeError(`there is no layer ${layer} in element ${element}`);
  return found;
}

/** @throws RangeError when the element has none */
function layersAt(house: House, element: number): Layer[] {
  const { name, buildUp } = elementAt(house, element);
  if (buildUp === undefined) throw new RangeError(`the element "${name}" has no layers`);
  return buildUp.layers;
}
