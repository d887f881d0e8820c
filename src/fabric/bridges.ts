/** Heat that escapes where elements meet. */
import { sum } from 'simple-statistics';
import type { House, JunctionKind } from '../house.ts';
import type { FabricFinding } from './finding.ts';
import type { Source } from './materials/value.ts';

/** From memory, to be confirmed. */
export const junctionSource: Source = { mark: 'MEMORY', source: 'SAP 2012, Appendix K, Table K1' };

/**
 * Linear thermal transmittance ψ [W/(mK)] of a junction that nobody worked out, and of one that was detailed
 * with care: the default and approved values of `junctionSource`.
 */
export const junctionDefaults: Readonly<
  Record<JunctionKind, { readonly usual: number; readonly careful: number }>
> = {
  lintel: { usual: 1, careful: 0.3 },
  sill: { usual: 0.08, careful: 0.04 },
  jamb: { usual: 0.1, careful: 0.05 },
  'ground-floor': { usual: 0.32, careful: 0.16 },
  'intermediate-floor': { usual: 0.14, careful: 0.07 },
  eaves: { usual: 0.12, careful: 0.06 },
  'eaves-of-warm-roof': { usual: 0.08, careful: 0.04 },
  gable: { usual: 0.48, careful: 0.24 },
  'gable-of-warm-roof': { usual: 0.08, careful: 0.04 },
  ridge: { usual: 0.08, careful: 0.04 },
  corner: { usual: 0.18, careful: 0.09 },
  'inner-corner': { usual: 0, careful: -0.09 },
  'party-wall': { usual: 0.12, careful: 0.06 },
};

/** Of every m² where nothing is known of the details [W/(m²K)]. SAP 2012, Appendix K. From memory, to be confirmed. */
export const unknownYValue = 0.15;

/** Relative standard deviations [–] by how the figure is known. PRACTICE. */
const sdStated = 0.2;
const sdYValue = 0.3;
/** A default lies high on purpose: the careful figure, half of it, is two standard deviations away. */
const sdDefault = 0.25;

export interface BridgesDesign {
  /** [W/K] */
  readonly heatLoss: number;
  /** One standard deviation [W/K]. */
  readonly sd: number;
  /** Each junction's part [W/K], in their order; empty where none are told apart. */
  readonly junctions: readonly number[];
  readonly findings: readonly FabricFinding[];
}

/**
 * Thermal bridges by a sum of ψ times length, by junctions, or by an allowance over the exposed area.
 *
 * @param exposedArea [m²]
 * @see ISO 13789:2017, 7.2; ISO 14683:2017 for the use of default values
 */
export function bridgesOf({ thermalBridges }: House, exposedArea: number): BridgesDesign {
  if (thermalBridges === undefined) {
    const where = { key: 'thermalBridges' };
    return { heatLoss: 0, sd: 0, junctions: [], findings: [{ code: 'bridges-not-stated', where }] };
  }
  const { psiLengthWK, yValue, junctions } = thermalBridges;
  if (junctions !== undefined) return byJunctions(junctions);
  const heatLoss = psiLengthWK ?? (yValue ?? 0) * exposedArea;
  const relative = psiLengthWK === undefined ? sdYValue : sdStated;
  return { heatLoss, sd: relative * Math.abs(heatLoss), junctions: [], findings: [] };
}

type Junctions = NonNullable<NonNullable<House['thermalBridges']>['junctions']>;

/** What is wrong with one ψ is wrong with its like, so deviations add up. */
function byJunctions(entries: Junctions): BridgesDesign {
  const each = entries.map(({ kind, lengthM, psiWmK }) => {
    const psi = psiWmK ?? (kind === undefined ? 0 : junctionDefaults[kind].usual);
    const relative = psiWmK === undefined ? sdDefault : sdStated;
    return { heatLoss: psi * lengthM, sd: relative * Math.abs(psi * lengthM) };
  });
  const kinds = [...new Set(entries.flatMap((it) => (it.psiWmK === undefined && it.kind ? [it.kind] : [])))];
  const where = { key: 'thermalBridges.junctions' };
  return {
    heatLoss: sum(each.map((it) => it.heatLoss)),
    sd: sum(each.map((it) => it.sd)),
    junctions: each.map((it) => it.heatLoss),
    findings: kinds.length > 0 ? [{ code: 'junctions-by-default', kinds, where }] : [],
  };
}
