/** Air layers: what they resist, and how far outdoor air passes through them. */
import type { HeatFlow } from '../house.ts';
import type { BuildUp, BuildUpLayer } from './buildUp.ts';
import type { Surfaces } from './surfaces.ts';

/** Thickness [m] of the rows below. ISO 6946:2017, Table 8; MEMORY. */
const thicknesses = [0, 0.005, 0.007, 0.01, 0.015, 0.025, 0.05, 0.1, 0.3];
/** Resistance [m²K/W] by the way heat flows; same table. */
const resistances: Readonly<Record<HeatFlow, readonly number[]>> = {
  up: [0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16],
  across: [0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18],
  down: [0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23],
};
/** The thickest air layer that the table covers [m]. */
export const thickestAirLayer = 0.3;

/** Openings [m² per m] up to which a layer is unventilated, from which well ventilated. ISO 6946:2017, 6.9; MEMORY. */
const tight = 500e-6;
const open = 1500e-6;
/** Taken for a slightly ventilated layer that does not state its openings [m² per m]: halfway. */
export const assumedOpening = 1000e-6;

/**
 * Resistance of an unventilated air layer [m²K/W], linear between the rows; beyond 300 mm that of 300 mm.
 *
 * @param thickness [m]
 * @see ISO 6946:2017, 6.9.2 and Table 8
 */
export function airLayerResistance(facing: HeatFlow, thickness: number): number {
  const row = resistances[facing];
  const above = thicknesses.findIndex((it) => it >= thickness);
  if (above < 0) return row[row.length - 1];
  if (above === 0) return row[0];
  const part = (thickness - thicknesses[above - 1]) / (thicknesses[above] - thicknesses[above - 1]);
  return row[above - 1] + part * (row[above] - row[above - 1]);
}

/**
 * How far a layer counts as well ventilated [–]: 0 not at all, 1 wholly, between for a slightly ventilated
 * one.
 *
 * @see ISO 6946:2017, 6.9.3: RT = (1500 - Av)/1000 · RT,unventilated + (Av - 500)/1000 · RT,ventilated, Av in
 * mm²
 */
export function ventilatedShare(layer: BuildUpLayer): number {
  if (layer.kind !== 'air' || layer.ventilation === 'unventilated') return 0;
  if (layer.ventilation === 'ventilated') return 1;
  const opening = layer.opening ?? assumedOpening;
  return Math.min(1, Math.max(0, (opening - tight) / (open - tight)));
}

/** The layers that resist, and the surfaces about them. */
export interface Shell {
  readonly layers: readonly BuildUpLayer[];
  readonly surfaces: Surfaces;
}

/**
 * The build-up as far as its first well ventilated layer: that layer and all outside it count for nothing,
 * and the air in it is still, so the outside surface takes the inside resistance.
 *
 * @see ISO 6946:2017, 6.9.4
 */
export function withinVentilated({ layers }: BuildUp, surfaces: Surfaces): Shell {
  const end = layers.findIndex((layer) => ventilatedShare(layer) === 1);
  return end < 0 ? { layers, surfaces } : cutAt(layers, end, surfaces);
}

/** The layers inside of layer `end`, which is taken as well ventilated. */
export function cutAt(layers: readonly BuildUpLayer[], end: number, surfaces: Surfaces): Shell {
  return { layers: layers.slice(0, end), surfaces: { inside: surfaces.inside, outside: surfaces.inside } };
}
