/** The border outward: a material of the library as a layer of `house.json`. */
import type { Bridge, Layer } from '../../house.ts';
import type { Material, SolidMaterial } from './value.ts';

/** Of a sheet: it counts for vapour only. */
const noResistance = 0;

/**
 * A layer of this material, with everything the library knows of it. Vapour resistance factors are those of
 * the dry material.
 *
 * @param thicknessMm not asked of a sheet
 */
export function layerOf(material: Material, thicknessMm: number): Layer {
  const { name } = material;
  if (material.kind === 'air') return { name, thicknessMm, air: material.ventilation };
  if (material.kind === 'sheet')
    return { name, resistanceM2KW: noResistance, sdM: material.vapour.thickness };
  const { vapour } = material;
  return {
    name,
    thicknessMm,
    ...heatOf(material),
    ...(vapour.kind === 'factor' ? { vapourResistance: vapour.dry } : { sdM: vapour.thickness }),
  };
}

/** Members of this material that run through a layer, `widthMm` wide at `spacingMm` centres. */
export function bridgeOf(
  material: SolidMaterial,
  at: Pick<Bridge, 'name' | 'widthMm' | 'spacingMm'>,
): Bridge {
  return { ...at, ...heatOf(material) };
}

function heatOf({ conductivity, density, specificHeat }: SolidMaterial) {
  return {
    conductivityWmK: conductivity.value,
    densityKgM3: density.value,
    specificHeatJkgK: specificHeat.value,
  };
}
