/** The border of the moisture calculation: a build-up of `house.json` to layers that hold back heat and vapour. */
import type { DesignElement, Layer } from '../../house.ts';
import { buildUpFrom } from '../fromHouse.ts';
import { type Beyond, type Surfaces, surfacesOf } from '../surfaces.ts';
import { transmittanceOf } from '../transmittance.ts';
import type { MoistureFinding } from './finding.ts';

export interface MoistureLayer {
  readonly name: string;
  /** [m²K/W] */
  readonly resistance: number;
  /** sd: the still air that would hold back vapour as much [m]. */
  readonly vapourThickness: number;
}

export interface MoistureSection {
  /** From inside to outside, as far as the first well ventilated layer. */
  readonly layers: readonly MoistureLayer[];
  readonly surfaces: Surfaces;
}

export type MoistureInput =
  | { readonly known: true; readonly section: MoistureSection; readonly findings: MoistureFinding[] }
  | { readonly known: false; readonly findings: MoistureFinding[] };

/** sd of any air layer [m]: it mixes, so its thickness does not count. ISO 13788:2012 (MEMORY). */
const vapourThicknessOfAir = 0.01;
/** The least sd of a layer [m]; through none at all vapour would flow without end. */
const leastVapourThickness = 0.001;

/**
 * The layers beside the timbers, with the resistances that ISO 6946 gives them.
 *
 * @param buildUp of an element in `house.json`; keys of findings count from it: `layers[1]`
 */
export function moistureLayersFrom(
  buildUp: NonNullable<DesignElement['buildUp']>,
  beyond: Beyond = 'outside',
): MoistureInput {
  if (beyond === 'ground')
    return { known: false, findings: [{ code: 'moisture-ground-not-covered', where: { key: 'layers' } }] };
  const { facing = 'across' } = buildUp;
  const layers = buildUp.layers.map(({ bridge: _, ...beside }): Layer => beside);
  const { cases } = transmittanceOf(buildUpFrom({ facing, layers }), surfacesOf(facing, beyond));
  const { layers: resistances, surfaces } = cases[0];
  const within = layers.slice(0, resistances.length);
  const missing = within.flatMap(missingFinding);
  if (missing.length > 0) return { known: false, findings: missing };
  return {
    known: true,
    section: {
      surfaces,
      layers: within.map((layer, i) => ({
        name: layer.name,
        resistance: resistances[i],
        vapourThickness: Math.max(leastVapourThickness, vapourThicknessOf(layer) ?? 0),
      })),
    },
    findings: [
      ...buildUp.layers.slice(0, resistances.length).flatMap(layerFindings),
      ...endFindings(buildUp.layers, resistances.length),
    ],
  };
}

/** [m]; null where the layer does not say. */
function vapourThicknessOf({ sdM, vapourResistance, thicknessMm, air }: Layer): number | null {
  if (sdM !== undefined) return sdM;
  if (air !== undefined) return vapourThicknessOfAir;
  if (vapourResistance === undefined || thicknessMm === undefined) return null;
  return (vapourResistance * thicknessMm) / 1000;
}

function missingFinding(layer: Layer, i: number): MoistureFinding[] {
  if (vapourThicknessOf(layer) !== null) return [];
  return [{ code: 'vapour-resistance-missing', name: layer.name, where: { key: `layers[${i}]` } }];
}

function layerFindings({ name, air, bridge }: Layer, i: number): MoistureFinding[] {
  const where = { key: `layers[${i}]` };
  return [
    ...(bridge === undefined ? [] : [{ code: 'moisture-beside-bridge', name: bridge.name, where } as const]),
    ...(air === 'slightly' ? [{ code: 'moisture-vent-taken-as-still', name, where } as const] : []),
  ];
}

function endFindings(layers: readonly Layer[], end: number): MoistureFinding[] {
  if (end >= layers.length) return [];
  const where = { key: `layers[${end}]` };
  return [{ code: 'moisture-ends-at-ventilated', name: layers[end].name, where }];
}
