/** Where the combined method may not be used, so that there is no transmittance by it. */
import type { BuildUpLayer } from './buildUp.ts';
import type { FabricFinding } from './finding.ts';

export type Refusal = Extract<
  FabricFinding,
  { code: 'combined-method-out-of-range' | 'metal-bridges-insulation' }
>;

/** Largest ratio of upper to lower limit for which the standard stands by the method. ISO 6946:2017, 6.7.2; MEMORY. */
const largestRatio = 1.5;
/** What conducts better than this is a metal [W/(mK)]: stainless steel has 15 to 17, stone at most 4. PRACTICE. */
export const leastOfMetals = 10;
/** What conducts less than this insulates [W/(mK)]: the best of timbers and blocks come to 0.1. PRACTICE. */
const mostOfInsulation = 0.1;

/**
 * Why the method gives no transmittance for these layers; nothing when it does.
 *
 * @param ratio of upper to lower limit
 * @see ISO 6946:2017, 6.7.2: not where metal bridges insulation, nor where the ratio is above 1.5
 */
export function refusalsOf(layers: readonly BuildUpLayer[], ratio: number): Refusal[] {
  const metal = layers.flatMap((layer, i): Refusal[] => {
    const { bridge } = layer;
    if (bridge === null || bridge.conductivity < leastOfMetals || !insulates(layer)) return [];
    const { name, conductivity } = bridge;
    const where = { key: `layers[${i}].bridge` };
    return [{ code: 'metal-bridges-insulation', name, conductivity, where }];
  });
  if (ratio <= largestRatio) return metal;
  const where = { key: 'layers' };
  return [...metal, { code: 'combined-method-out-of-range', ratio, limit: largestRatio, where }];
}

/** A layer stated by its resistance alone has no conductivity to tell by. */
export function insulates(layer: BuildUpLayer): boolean {
  if (layer.kind === 'solid') return layer.conductivity < mostOfInsulation;
  if (layer.kind === 'air' || layer.thickness === null) return false;
  return layer.thickness < mostOfInsulation * layer.resistance;
}
