/** The library of materials: what is in a build-up, with where each figure comes from. */
export { findMaterials, materialNamed } from './find.ts';
export { bridgeOf, layerOf } from './layer.ts';
export { materials } from './materials.ts';
export type { Mark, Material, MaterialGroup, Source, Value } from './value.ts';
