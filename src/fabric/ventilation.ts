/** The heat that goes with the air: always a range, since rules of thumb are weak. */
import type { Estimate } from '../assessment.ts';
import type { House } from '../house.ts';
import type { FabricFinding } from './finding.ts';

/**
 * Heat that a cubic metre of air carries [W·h/(m³K)]. 1.2 kg/m³ · 1005 J/(kgK) / 3600 s/h = 0.335, which
 * national procedures round to 0.33; the contract of `house.json` does so too.
 */
const heatOfAir = 0.33;
/** From the leakage at 50 Pa to that of an average day [–]; a rule of thumb. MEMORY: Kronvall and Persily; Sherman 1987. */
const usualDivisor = 20;
/** The divisor's range about its value: 10 to 30 about 20 covers the climates and houses of Sherman 1987. MEMORY. */
const divisorRange = { low: 0.5, high: 1.5 } as const;
/** What a stated air change may be off by [–]. PRACTICE. */
const usualPlusMinus = 0.3;
/** Heat recovery as installed against as declared [–]: up to this much less, half of it more. PRACTICE. */
const recoveryLess = 0.1;

/** S, on the divisor [–]. Sherman 1987; MEMORY. */
const shelterFactors = { sheltered: 1.2, average: 1, exposed: 0.9 } as const;
/** H, on the divisor, by storeys [–]: taller houses draw more. Sherman 1987; MEMORY. */
const storeyFactors = [
  [1, 1],
  [1.5, 0.9],
  [2, 0.8],
  [3, 0.7],
] as const;

export interface VentilationDesign {
  /** [W/K] with its range */
  readonly asDrawn: Estimate;
  /** Vents shut and fans off, so nothing is recovered [W/K]; null when that is not stated. */
  readonly asTested: Estimate | null;
  readonly findings: readonly FabricFinding[];
}

/**
 * Ventilation heat loss of the house, from air changes or from the permeability at 50 Pa.
 *
 * Heat recovery counts on the air through the unit where that is stated, else on all of it.
 *
 * @param exposedArea [m²]
 * @throws RangeError if ventilation is given without the volume, which the schema refuses
 * @see ISO 13789:2017, 8
 */
export function ventilationOf({ ventilation, volumeM3 }: House, exposedArea: number): VentilationDesign {
  if (ventilation === undefined) {
    const where = { key: 'ventilation' };
    return { asDrawn: exactly(0), asTested: null, findings: [{ code: 'ventilation-not-stated', where }] };
  }
  if (volumeM3 === undefined) throw new RangeError('ventilation needs the volume of the house');
  const {
    heatRecovery = 0,
    mechanicalAirChangesPerHour: unit,
    asTestedAirChangesPerHour: tested,
  } = ventilation;
  const { airChangesPerHour: rest, findings } = airChangesOf(ventilation, exposedArea, volumeM3);
  const kept = unit === undefined ? heatRecovery : 0;
  const recovery = recoveryRange(heatRecovery);
  const at = (end: keyof Estimate, recoveredAtEnd: number) =>
    ventilationLoss(rest[end], volumeM3, kept === 0 ? 0 : recoveredAtEnd) +
    ventilationLoss(unit ?? 0, volumeM3, recoveredAtEnd);
  return {
    asDrawn: {
      value: at('value', heatRecovery),
      low: at('low', recovery.high),
      high: at('high', recovery.low),
    },
    asTested:
      tested === undefined ? null : scaled(plusMinus(tested, usualPlusMinus), ventilationLoss(1, volumeM3)),
    findings,
  };
}

/**
 * Heat loss with the air [W/K]: 0.33·n·V, less what is recovered.
 *
 * @param volume       [m³]
 * @param heatRecovery share given back to the incoming air [–, 0 to 1]
 */
export function ventilationLoss(airChangesPerHour: number, volume: number, heatRecovery = 0): number {
  return heatOfAir * airChangesPerHour * volume * (1 - heatRecovery);
}

/**
 * Everyday air changes per hour from the permeability at 50 Pa.
 *
 * @param airPermeability50 [m³/(h·m²)] over the exposed area
 * @param exposedArea       [m²]
 * @param volume            [m³]
 */
export function airChangesFromPermeability(
  airPermeability50: number,
  exposedArea: number,
  volume: number,
  divisor: number = usualDivisor,
): number {
  return (airPermeability50 * exposedArea) / volume / divisor;
}

/**
 * From the leakage at 50 Pa to that of an average day [–]: 20, more in shelter, less in tall houses.
 *
 * @see Sherman, Estimation of infiltration from leakage and climate indicators, Energy and Buildings 10 (1987)
 */
export function divisorOf(shelter: keyof typeof shelterFactors = 'average', storeys = 1): number {
  const [, height] = storeyFactors.findLast(([from]) => storeys >= from) ?? storeyFactors[0];
  return usualDivisor * height * shelterFactors[shelter];
}

type Ventilation = NonNullable<House['ventilation']>;

/** What comes in beside the unit, per hour. */
function airChangesOf(
  ventilation: Ventilation,
  exposedArea: number,
  volume: number,
): { readonly airChangesPerHour: Estimate; readonly findings: readonly FabricFinding[] } {
  const { airChangesPerHour, airPermeability50, plusMinusPercent, heatRecovery = 0 } = ventilation;
  if (airPermeability50 === undefined) {
    const off = plusMinusPercent === undefined ? usualPlusMinus : plusMinusPercent / 100;
    return { airChangesPerHour: plusMinus(airChangesPerHour ?? 0, off), findings: [] };
  }
  const divisor = ventilation.divisor ?? divisorOf(ventilation.shelter, ventilation.storeys);
  const low = ventilation.divisorLow ?? divisor * divisorRange.low;
  const high = ventilation.divisorHigh ?? divisor * divisorRange.high;
  const by = (it: number) => airChangesFromPermeability(airPermeability50, exposedArea, volume, it);
  const findings: FabricFinding[] = [
    { code: 'leakage-by-divisor', divisor, low, high, where: { key: 'ventilation.airPermeability50' } },
  ];
  if (heatRecovery > 0 && ventilation.mechanicalAirChangesPerHour === undefined)
    findings.push({
      code: 'heat-recovery-on-leakage',
      heatRecovery,
      where: { key: 'ventilation.heatRecovery' },
    });
  return { airChangesPerHour: { value: by(divisor), low: by(high), high: by(low) }, findings };
}

const recoveryRange = (recovery: number) =>
  recovery === 0
    ? { low: 0, high: 0 }
    : { low: Math.max(0, recovery - recoveryLess), high: Math.min(1, recovery + recoveryLess / 2) };

const exactly = (value: number): Estimate => ({ value, low: value, high: value });
const plusMinus = (value: number, off: number): Estimate =>
  scaled({ value: 1, low: 1 - off, high: 1 + off }, value);
const scaled = ({ value, low, high }: Estimate, by: number): Estimate => ({
  value: value * by,
  low: low * by,
  high: high * by,
});
