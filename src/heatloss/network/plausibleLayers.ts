/** Layers made up for elements of which no more is known than a transmittance and how much heat the house holds. */
import { type BuildUp, periodicResponse } from '../../fabric/index.ts';
import { resistanceOf, type Slab, type SlabLayer } from './slab.ts';

/** Around the insulation [J/(m²K)]: of its own, and of the cladding outside of it. PRACTICE. */
const INSULATION_CAPACITY = 5e3;
const OUTER_CAPACITY = 60e3;
const OUTER_RESISTANCE = 0.1; // [m²K/W]

/** Boards and plaster: 12.5 mm at 0.21 W/(mK), 800 kg/m³, 1000 J/(kgK). PRACTICE. */
const LIGHT: SlabLayer = { resistance: 0.0125 / 0.21, arealHeatCapacity: 0.0125 * 800e3, insulating: false };
/** Masonry, screed, thick timber: 100 mm at 0.8 W/(mK), 1700 kg/m³, 900 J/(kgK). PRACTICE. */
const HEAVY: SlabLayer = { resistance: 0.1 / 0.8, arealHeatCapacity: 0.1 * 1700 * 900, insulating: false };

/** What the rooms are lined with: a share of all faces is massive, the rest is boards. */
export interface Lining {
  /** [–] */
  readonly share: number;
  readonly layer: SlabLayer;
}

/**
 * Linings that together hold what is wanted per face over 24 hours. A house holds heat in some massive faces rather
 * than in many thick boards, and what lies deep in those still works at night.
 *
 * @param arealHeatCapacity wanted on average of all faces, seen from inside [J/(m²K)]
 */
export function liningsOf(arealHeatCapacity: number): Lining[] {
  const light = capacityOf(LIGHT);
  const heavy = capacityOf(HEAVY);
  const share = (arealHeatCapacity - light) / (heavy - light);
  if (share <= 0) return [{ share: 1, layer: scaled(LIGHT, arealHeatCapacity / light) }];
  if (share >= 1) return [{ share: 1, layer: thicker(HEAVY, arealHeatCapacity / heavy) }];
  return [
    { share, layer: HEAVY },
    { share: 1 - share, layer: LIGHT },
  ];
}

/** Mass deeper than a day reaches adds less and less: what is wanted beyond that cannot be had. */
const thicker = (layer: SlabLayer, by: number): SlabLayer => ({
  ...layer,
  resistance: layer.resistance * by,
  arealHeatCapacity: layer.arealHeatCapacity * by,
});

const scaled = (layer: SlabLayer, by: number): SlabLayer => ({
  ...layer,
  arealHeatCapacity: layer.arealHeatCapacity * by,
});

/** Over 24 hours, with insulation behind that lets next to nothing through [J/(m²K)]. */
function capacityOf({ resistance, arealHeatCapacity }: SlabLayer): number {
  const thickness = 0.1;
  const density = arealHeatCapacity / thickness / 1000;
  const lining = { thickness, conductivity: thickness / resistance, density, specificHeat: 1000 };
  const buildUp: BuildUp = {
    facing: 'across',
    layers: [
      { kind: 'solid', name: 'lining', ...lining, bridge: null },
      {
        kind: 'solid',
        name: 'insulation',
        thickness: 0.1,
        conductivity: 0.03,
        density: 25,
        specificHeat: 1000,
        bridge: null,
      },
    ],
  };
  return periodicResponse(buildUp, { inside: 0.13, outside: 0.04 }).insideHeatCapacity;
}

/** A lining, insulation that makes up the transmittance, and a cladding. */
export function plausibleSlab(transmittance: number, lining: SlabLayer): Slab {
  const surfaces = { inside: 0.13, outside: 0.04 };
  const whole = Math.max(1e-3, 1 / transmittance - surfaces.inside - surfaces.outside);
  const outer = { resistance: OUTER_RESISTANCE, arealHeatCapacity: OUTER_CAPACITY, insulating: false };
  const rest = whole - lining.resistance - outer.resistance;
  if (rest > 0.3 * whole)
    return {
      layers: [lining, { resistance: rest, arealHeatCapacity: INSULATION_CAPACITY, insulating: true }, outer],
      surfaces,
    };
  const shrunk = whole / resistanceOf([lining, outer]);
  return {
    layers: [lining, outer].map((it) => ({ ...it, resistance: it.resistance * shrunk, insulating: true })),
    surfaces,
  };
}
