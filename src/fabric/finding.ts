/** What the design side noticed: codes and figures [SI]; the sentences stand in `words/`. */
import type { Where } from '../assessment.ts';

export type FabricFinding = {
  readonly where: Where;
} /** A slightly ventilated air layer without its openings; the one named was taken [m² per m]. */ & (
  | { readonly code: 'openings-assumed'; readonly opening: number }
  /** An air layer thicker than ISO 6946 covers; the resistance of the thickness taken stands for it [m]. */
  | { readonly code: 'air-layer-thick'; readonly thickness: number; readonly taken: number }
  /** Several bridged layers: their bridges were taken to cross at random. */
  | { readonly code: 'bridges-cross'; readonly count: number }
  /** Upper over lower limit of the resistance is above `limit`: ISO 6946 gives no error for the figure. */
  | { readonly code: 'combined-method-out-of-range'; readonly ratio: number; readonly limit: number }
  /** Fasteners through a layer that states no thickness: left out of the transmittance. */
  | { readonly code: 'fasteners-without-thickness' }
  /** A layer or a bridge without density or specific heat: it stores nothing in the heat capacity. */
  | { readonly code: 'layer-without-mass' }
  /** Layers on the ground without the exposed perimeter: the ground itself was left out. */
  | { readonly code: 'ground-without-perimeter' }
  /** A slab on ground by ISO 13370, with the wall [m] and the ground [W/(mK)] that were assumed. */
  | { readonly code: 'ground-assumed'; readonly wallThickness: number; readonly groundConductivity: number }
  | { readonly code: 'bridges-not-stated' }
  | { readonly code: 'ventilation-not-stated' }
  /** Heat recovery was taken on air that leaks in beside the unit, since no other air change is stated. */
  | { readonly code: 'heat-recovery-on-leakage'; readonly heatRecovery: number }
  | { readonly code: 'partition-without-layers'; readonly name: string }
  /**
   * Opaque elements without known mass; each was given this areal capacity [J/(m²K)] with this relative sd.
   */
  | {
      readonly code: 'mass-unknown';
      readonly elements: readonly string[];
      readonly arealHeatCapacity: number;
      readonly relativeSd: number;
    }
  /** No floor area, so furniture and air are not in the heat capacity. */
  | { readonly code: 'furniture-left-out' }
  /** No mass is known: the "medium" class stands in, per floor area [J/(m²K)]. */
  | {
      readonly code: 'heat-capacity-by-class';
      readonly arealHeatCapacity: number;
      readonly relativeSd: number;
    }
  | { readonly code: 'heat-capacity-unknown' }
);

/** The findings of a part, seen from the whole: `layers[1]` becomes `elements[2].buildUp.layers[1]`. */
export function within(path: string, findings: readonly FabricFinding[]): FabricFinding[] {
  return findings.map((it) => ({
    ...it,
    where: { ...it.where, key: it.where.key ? `${path}.${it.where.key}` : path },
  }));
}
