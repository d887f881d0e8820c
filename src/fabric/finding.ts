/** What the design side noticed: codes and figures [SI]; the sentences stand in `words/`. */
import type { Where } from '../assessment.ts';
import type { JunctionKind } from '../house.ts';

export type FabricFinding = {
  readonly where: Where;
} /** A slightly ventilated air layer without its openings; the one named was taken [m² per m]. */ & (
  | { readonly code: 'openings-assumed'; readonly opening: number }
  /** An air layer thicker than ISO 6946 covers; the resistance of the thickness taken stands for it [m]. */
  | { readonly code: 'air-layer-thick'; readonly thickness: number; readonly taken: number }
  /** Several layers with members of their own, which were taken to cross each other. */
  | { readonly code: 'bridges-cross'; readonly count: number }
  /** Refused: upper over lower limit of the resistance is above `limit`. */
  | { readonly code: 'combined-method-out-of-range'; readonly ratio: number; readonly limit: number }
  /** Refused: members of metal through insulation [W/(mK)]. */
  | { readonly code: 'metal-bridges-insulation'; readonly name: string; readonly conductivity: number }
  /** The house has no designed heat loss, since these elements have no transmittance. */
  | { readonly code: 'no-transmittance'; readonly elements: readonly string[] }
  /** A transmittance stands beside layers and was taken instead of theirs [W/(m²K)]; null where they are refused. */
  | { readonly code: 'stated-beside-layers'; readonly stated: number; readonly byLayers: number | null }
  /** Figures that look like a slip, with what was likely meant; they were taken as they stand. In SI. */
  | { readonly code: 'thickness-doubtful'; readonly thickness: number; readonly likely: number }
  | { readonly code: 'conductivity-doubtful'; readonly conductivity: number; readonly likely: number }
  | { readonly code: 'density-doubtful'; readonly density: number; readonly likely: number }
  | { readonly code: 'specific-heat-doubtful'; readonly specificHeat: number; readonly likely: number }
  | { readonly code: 'mass-changed-over'; readonly density: number; readonly specificHeat: number }
  | { readonly code: 'transmittance-doubtful'; readonly transmittance: number; readonly likely: number }
  /** Fasteners through a layer that states no thickness: left out of the transmittance. */
  | { readonly code: 'fasteners-without-thickness' }
  /** A layer or a bridge without density or specific heat: it stores nothing in the heat capacity. */
  | { readonly code: 'layer-without-mass' }
  /** Layers on the ground without the exposed perimeter: the ground itself was left out. */
  | { readonly code: 'ground-without-perimeter' }
  /** A floor on ground by ISO 13370, with the wall [m] and the ground [W/(mK)] that were assumed. */
  | { readonly code: 'ground-assumed'; readonly wallThickness: number; readonly groundConductivity: number }
  /** Values taken for the space under a suspended floor, by the keys that would state them. */
  | { readonly code: 'underfloor-assumed'; readonly keys: readonly string[] }
  /** Share of the difference taken to lie over an element to an unheated space [–]. */
  | { readonly code: 'void-factor-assumed'; readonly factor: number }
  /** Elements to a neighbour whose temperature is neither logged nor stated. */
  | { readonly code: 'neighbour-unknown'; readonly elements: readonly string[] }
  /** The neighbour's temperature is stated without how far it may be off; this much was taken [K]. */
  | { readonly code: 'neighbour-range-assumed'; readonly plusMinus: number }
  /** Refused elements to a neighbour: what flows there is not known, the house's heat loss is. */
  | { readonly code: 'flow-to-neighbour-unknown'; readonly elements: readonly string[] }
  /** Areas, volumes and lengths that hardly fit together [m², m³, m]; they were taken as they stand. */
  | {
      readonly code: 'shell-too-small';
      readonly area: number;
      readonly least: number;
      readonly volume: number;
    }
  | { readonly code: 'shell-too-large'; readonly area: number; readonly volume: number }
  | { readonly code: 'height-doubtful'; readonly height: number }
  | { readonly code: 'ground-floor-too-large'; readonly area: number; readonly floorArea: number }
  | { readonly code: 'roof-smaller-than-floor'; readonly roof: number; readonly floor: number }
  | { readonly code: 'mostly-glass'; readonly glass: number; readonly area: number }
  | { readonly code: 'perimeter-doubtful'; readonly perimeter: number; readonly area: number }
  | { readonly code: 'bridges-not-stated' }
  /** Junctions without a ψ of their own took the default of their kind. */
  | { readonly code: 'junctions-by-default'; readonly kinds: readonly JunctionKind[] }
  /** Everyday air changes from the leakage at 50 Pa by a rule of thumb; the divisor and its range [–]. */
  | {
      readonly code: 'leakage-by-divisor';
      readonly divisor: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly code: 'ventilation-not-stated' }
  /** Heat recovery was taken on air that leaks in beside the unit, since no other air change is stated. */
  | { readonly code: 'heat-recovery-on-leakage'; readonly heatRecovery: number }
  | { readonly code: 'partition-without-layers'; readonly name: string }
  /** Elements whose mass is by the class stated for them, with its relative sd [–]. */
  | { readonly code: 'mass-by-class'; readonly elements: readonly string[]; readonly relativeSd: number }
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
