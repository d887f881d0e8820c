/** What a build-up stores and passes on over a period, by the transfer matrix. */
import { sum } from 'simple-statistics';
import { withinVentilated } from './airLayers.ts';
import type { BuildUp, BuildUpLayer } from './buildUp.ts';
import {
  add,
  argument,
  type Complex,
  complex,
  cosh,
  divide,
  modulus,
  multiply,
  scale,
  sinh,
  subtract,
} from './complex.ts';
import type { FabricFinding } from './finding.ts';
import { type Part, sectionsOf } from './sections.ts';
import type { Surfaces } from './surfaces.ts';

/** A heat flow per temperature swing. */
export interface Response {
  /** [W/(m²K)] */
  readonly modulus: number;
  /** How far the flow runs ahead of the temperature [s]; negative where it lags. */
  readonly lead: number;
}

export interface PeriodicResponse {
  /** κ1: areal heat capacity seen from inside [J/(m²K)]. */
  readonly insideHeatCapacity: number;
  /** κ2: areal heat capacity seen from outside [J/(m²K)]. */
  readonly outsideHeatCapacity: number;
  /** Y11 */
  readonly insideAdmittance: Response;
  /** Y22 */
  readonly outsideAdmittance: Response;
  /** Y12; its lead lies above minus a whole period and at most at 0. */
  readonly periodicTransmittance: Response;
  /** f: periodic over steady transmittance of the same paths side by side [–]. */
  readonly decrement: number;
  /** How much later a swing of the outside temperature drives heat in [s]: the lag of Y12. */
  readonly timeShift: number;
  /** Keys count from the build-up: `layers[1]`. */
  readonly findings: readonly FabricFinding[];
}

/** [s] */
export const day = 86_400;

/**
 * Dynamic thermal characteristics of a build-up, from air to air.
 *
 * Bridged layers: the flows of all sections side by side, weighted by area. Air layers store nothing; a
 * stated resistance does if its thickness, density and specific heat are given as well. Layers from the first
 * well ventilated one outwards do not count; a slightly ventilated one is taken as closed. The ground under a
 * floor is not part of it.
 *
 * @param period of the swing [s]
 * @throws RangeError if a layer without thickness has a bridge
 * @see ISO 13786:2017
 */
export function periodicResponse(
  buildUp: BuildUp,
  surfaces: Surfaces,
  period: number = day,
): PeriodicResponse {
  const shell = withinVentilated(buildUp, surfaces);
  const sections = sectionsOf(shell.layers, buildUp.facing);
  const flows = sections.map(({ fraction, parts }) => ({
    fraction,
    ...admittancesOf(transferMatrix(parts, shell.surfaces, period)),
  }));
  const sideBySide = (which: 'inside' | 'outside' | 'through') =>
    flows.map((flow) => scale(flow.fraction, flow[which])).reduce(add);
  const inside = sideBySide('inside');
  const outside = sideBySide('outside');
  const through = sideBySide('through');
  const steady = sum(
    sections.map(({ fraction, parts }) => fraction / steadyResistance(parts, shell.surfaces)),
  );
  const perSwing = period / (2 * Math.PI);
  const periodicTransmittance = laggingResponseOf(through, period);
  return {
    insideHeatCapacity: perSwing * modulus(subtract(inside, through)),
    outsideHeatCapacity: perSwing * modulus(subtract(outside, through)),
    insideAdmittance: responseOf(inside, perSwing),
    outsideAdmittance: responseOf(outside, perSwing),
    periodicTransmittance,
    decrement: modulus(through) / steady,
    timeShift: -periodicTransmittance.lead,
    findings: shell.layers.flatMap(massFindings),
  };
}

/** Takes temperature and heat flow at one face to those at the other. */
interface Matrix {
  readonly z11: Complex;
  readonly z12: Complex;
  readonly z21: Complex;
  readonly z22: Complex;
  /** All four are to be taken times e to this power. */
  readonly power: number;
}

/** From the air inside to the air outside: the innermost matrix stands rightmost. ISO 13786:2017. */
function transferMatrix(parts: readonly Part[], surfaces: Surfaces, period: number): Matrix {
  const slabs = parts.map((part) => slab(part.resistance, part.arealHeatCapacity, period));
  return [resistor(surfaces.inside), ...slabs, resistor(surfaces.outside)].reduce((within, next) =>
    product(next, within),
  );
}

const resistor = (resistance: number): Matrix => ({
  z11: complex(1),
  z12: complex(-resistance),
  z21: complex(0),
  z22: complex(1),
  power: 0,
});

/**
 * Hyperbolic functions of more than this overflow once multiplied; the face beyond is out of reach long
 * before.
 */
const deepest = 40;

/**
 * A homogeneous layer of resistance R and areal heat capacity C. With ξ = d/δ = √(πRC/T) and z = (1 + j)ξ the
 * standard's elements are cosh z, -R·sinh z/z and -jωC·sinh z/z. ISO 13786:2017.
 */
function slab(resistance: number, arealHeatCapacity: number, period: number): Matrix {
  const xi = Math.sqrt((Math.PI * resistance * arealHeatCapacity) / period);
  const z = complex(xi, xi);
  const reached = complex(Math.min(xi, deepest), Math.min(xi, deepest));
  const sinhOverZ = xi === 0 ? complex(1) : divide(sinh(reached), z);
  return {
    z11: cosh(reached),
    z12: scale(-resistance, sinhOverZ),
    z21: multiply(complex(0, (-2 * Math.PI * arealHeatCapacity) / period), sinhOverZ),
    z22: cosh(reached),
    power: 0,
  };
}

/** Kept at the size of 1, so that many thick layers do not overflow. */
function product(a: Matrix, b: Matrix): Matrix {
  const z11 = add(multiply(a.z11, b.z11), multiply(a.z12, b.z21));
  const size = modulus(z11);
  return {
    z11: scale(1 / size, z11),
    z12: scale(1 / size, add(multiply(a.z11, b.z12), multiply(a.z12, b.z22))),
    z21: scale(1 / size, add(multiply(a.z21, b.z11), multiply(a.z22, b.z21))),
    z22: scale(1 / size, add(multiply(a.z21, b.z12), multiply(a.z22, b.z22))),
    power: a.power + b.power + Math.log(size),
  };
}

/** Y11 = -Z11/Z12, Y22 = -Z22/Z12, Y12 = -1/Z12 [W/(m²K)]. ISO 13786:2017. */
function admittancesOf({ z11, z12, z22, power }: Matrix) {
  return {
    inside: scale(-1, divide(z11, z12)),
    outside: scale(-1, divide(z22, z12)),
    through: scale(-Math.exp(-power), divide(complex(1), z12)),
  };
}

const steadyResistance = (parts: readonly Part[], { inside, outside }: Surfaces): number =>
  inside + sum(parts.map((part) => part.resistance)) + outside;

const responseOf = (flow: Complex, perSwing: number): Response => ({
  modulus: modulus(flow),
  lead: perSwing * argument(flow),
});

function laggingResponseOf(flow: Complex, period: number): Response {
  const { modulus, lead } = responseOf(flow, period / (2 * Math.PI));
  return { modulus, lead: lead > 0 ? lead - period : lead };
}

function massFindings(layer: BuildUpLayer, i: number): FabricFinding[] {
  const missing = (it: { readonly density: number | null; readonly specificHeat: number | null }) =>
    it.density === null || it.specificHeat === null;
  const keys: string[] = [];
  if (layer.kind === 'solid' && missing(layer)) keys.push(`layers[${i}]`);
  if (layer.bridge !== null && missing(layer.bridge)) keys.push(`layers[${i}].bridge`);
  return keys.map((key) => ({ code: 'layer-without-mass', where: { key } }));
}
