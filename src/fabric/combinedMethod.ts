/** The two limits of a resistance: flow straight through, and flow that spreads freely in every layer. */
import { sum } from 'simple-statistics';
import type { HeatFlow } from '../house.ts';
import type { Shell } from './airLayers.ts';
import { blend, partsOf, sectionsOf } from './sections.ts';
import type { Surfaces } from './surfaces.ts';

/** One way through a build-up, from air to air. */
export interface SectionResistance {
  /** Share of the face [–]. */
  readonly fraction: number;
  /** Both surfaces included [m²K/W]. */
  readonly resistance: number;
  /** Of each layer on this way [m²K/W]. */
  readonly layers: readonly number[];
  /** The layers that it passes along their bridge, by position. */
  readonly bridged: readonly number[];
}

/** The limits for one state of the slightly ventilated layers, each of them taken as closed or as open. */
export interface Limits {
  /** [m²K/W] */
  readonly surfaces: Surfaces;
  /** Each layer that resists, bridge included, from inside to outside [m²K/W]. */
  readonly layers: readonly number[];
  readonly sections: readonly SectionResistance[];
  /** R′T [m²K/W] */
  readonly upper: number;
  /** R″T [m²K/W] */
  readonly lower: number;
}

/**
 * Upper limit: whole sections side by side. Lower limit: each layer's parts side by side, then in a row.
 *
 * @see ISO 6946:2017, 6.7.2
 */
export function limitsOf({ layers, surfaces }: Shell, facing: HeatFlow): Limits {
  const both = surfaces.inside + surfaces.outside;
  const sections = sectionsOf(layers, facing).map(({ fraction, parts }) => ({
    fraction,
    resistance: both + sum(parts.map((part) => part.resistance)),
    layers: parts.map((part) => part.resistance),
    bridged: parts.flatMap((part, i) => (part.bridge ? [i] : [])),
  }));
  const blended = layers.map((layer) => blend(partsOf(layer, facing)).resistance);
  return {
    surfaces,
    layers: blended,
    sections,
    upper: 1 / sum(sections.map((section) => section.fraction / section.resistance)),
    lower: both + sum(blended),
  };
}
