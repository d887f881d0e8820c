/** How sure the design of one element is, by where the doubt comes from. */
import type { DesignElement } from '../house.ts';
import type { BuildUp, BuildUpLayer } from './buildUp.ts';
import { noCorrections } from './corrections.ts';
import { groundFrom } from './fromHouse.ts';
import { throughLayers } from './throughLayers.ts';

/** One standard deviation of each [W/(m²K)]. */
export interface Spread {
  /** Of the conductivities: what makes boards worse than declared makes them so in the whole house. */
  readonly conductivity: number;
  /** Of the share of timber: one hand framed the whole house. */
  readonly timber: number;
  /** Of the method, the ground, or a transmittance that is stated: each element's own. */
  readonly other: number;
}

/** Relative standard deviations [–]. PRACTICE, all of them: no standard that could be read gives figures. */
export const practice = {
  /** Declared conductivities against what is built in: batch, moisture, ageing. */
  conductivity: 0.07,
  /** Members counted on the drawing against those that stand: 0.12 means 0.09 to 0.15. */
  timber: 0.25,
  statedTransmittance: 0.05,
  groundAssumed: 0.3,
  groundStated: 0.15,
} as const;

/** An element known by its transmittance alone. */
export const spreadOfStated = (transmittance: number): Spread => ({
  conductivity: 0,
  timber: 0,
  other: practice.statedTransmittance * transmittance,
});

/**
 * An element known by its layers: each doubt moved by one standard deviation and the transmittance worked out
 * again. Corrections stay out of it, since they come and go at their threshold. The method's error is
 * the largest possible, so a standard deviation is its √3rd part.
 */
export function spreadOfLayers(entry: DesignElement, buildUp: BuildUp): Spread | null {
  const by = (moved: BuildUp, ground?: number) =>
    throughLayers(entry, moved, noCorrections, ground).transmittance;
  const { transmittance: usual, transmission, ground } = throughLayers(entry, buildUp, noCorrections);
  if (usual === null) return null;
  // A moved build-up may just be refused where the drawn one is not; its doubt is then told by the other side.
  const moved = (to: (by: number) => BuildUp, sd: number) =>
    Math.abs((by(to(1 + sd)) ?? by(to(1 - sd)) ?? usual) - usual);
  const { around, assumed } = groundFrom(entry);
  const groundSd = assumed ? practice.groundAssumed : practice.groundStated;
  const throughGround =
    ground === null
      ? 0
      : Math.abs((by(buildUp, around.groundConductivity * (1 + groundSd)) ?? usual) - usual);
  const ofLayers = ground === null ? 1 : throughShare(usual, transmission.transmittance ?? usual);
  return {
    conductivity: moved((times) => mapped(buildUp, (it) => conducting(it, times)), practice.conductivity),
    timber: moved((times) => mapped(buildUp, (it) => framed(it, times)), practice.timber),
    other: Math.hypot((transmission.relativeError / Math.sqrt(3)) * usual * ofLayers, throughGround),
  };
}

/** What part of the whole resistance lies in the layers, where ground lies beyond them. */
const throughShare = (whole: number, layers: number): number => Math.min(1, whole / layers);

const mapped = (buildUp: BuildUp, change: (layer: BuildUpLayer) => BuildUpLayer): BuildUp => ({
  ...buildUp,
  layers: buildUp.layers.map(change),
});

/** Solids conduct `times` as well; the resistance of air is a matter of its own. */
function conducting(layer: BuildUpLayer, times: number): BuildUpLayer {
  const bridge = layer.bridge && { ...layer.bridge, conductivity: layer.bridge.conductivity * times };
  if (layer.kind === 'solid') return { ...layer, conductivity: layer.conductivity * times, bridge };
  if (layer.kind === 'stated') return { ...layer, resistance: layer.resistance / times, bridge };
  return { ...layer, bridge };
}

function framed(layer: BuildUpLayer, times: number): BuildUpLayer {
  const { bridge } = layer;
  if (bridge === null) return layer;
  return { ...layer, bridge: { ...bridge, fraction: Math.min(1, bridge.fraction * times) } };
}
