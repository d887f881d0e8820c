/** What a starting point is, and short ways to write one from the library. */
import type { Bridge, DesignElement, Layer } from '../../house.ts';
import { materialNamed } from '../materials/find.ts';
import { bridgeOf, layerOf } from '../materials/layer.ts';

export interface StartingPoint {
  readonly name: string;
  /** What it is and where it is found, in a sentence. */
  readonly about: string;
  /** An element of `house.json` without its area; a ground floor also wants its perimeter. */
  readonly element: Omit<DesignElement, 'areaM2'>;
}

/** A layer of the library. */
export const of = (material: string, thicknessMm: number): Layer =>
  layerOf(materialNamed(material), thicknessMm);

/** A membrane of the library. */
export const sheet = (material: string): Layer => of(material, 0);

/** An air space of the library, with timbers or battens through it where they are given. */
export const air = (ventilation: 'still' | 'ventilated', thicknessMm: number): Layer =>
  of(`${ventilation} air space`, thicknessMm);

/** The layer with softwood through it; `extraFraction` for plates, noggins and doubled members. */
export function between(
  name: string,
  widthMm: number,
  spacingMm: number,
  layer: Layer,
  extraFraction = 0,
): Layer {
  const softwood = materialNamed('softwood');
  if (softwood.kind !== 'solid') throw new RangeError('softwood is solid');
  const bridge: Bridge = bridgeOf(softwood, { name, widthMm, spacingMm });
  return { ...layer, bridge: extraFraction === 0 ? bridge : { ...bridge, extraFraction } };
}
