/** The heat that goes with the air. */
import type { House } from '../house.ts';
import type { FabricFinding } from './finding.ts';

/**
 * Heat that a cubic metre of air carries [W·h/(m³K)]. 1.2 kg/m³ · 1005 J/(kgK) / 3600 s/h = 0.335, which
 * national procedures round to 0.33; the contract of `house.json` does so too.
 */
const heatOfAir = 0.33;
/** From the leakage at 50 Pa to that of an average day [–]; a rule of thumb. */
const usualDivisor = 20;

export interface VentilationDesign {
  /** [W/K] */
  readonly asDrawn: number;
  /** Vents shut and fans off, so nothing is recovered [W/K]; null when that is not stated. */
  readonly asTested: number | null;
  readonly findings: readonly FabricFinding[];
}

/**
 * Ventilation heat loss of the house, from air changes or from the permeability at 50 Pa.
 *
 * @param exposedArea [m²]
 * @throws RangeError if ventilation is given without the volume, which the schema refuses
 */
export function ventilationOf({ ventilation, volumeM3 }: House, exposedArea: number): VentilationDesign {
  if (ventilation === undefined) {
    const where = { key: 'ventilation' };
    return { asDrawn: 0, asTested: null, findings: [{ code: 'ventilation-not-stated', where }] };
  }
  if (volumeM3 === undefined) throw new RangeError('ventilation needs the volume of the house');
  const { airPermeability50, divisor, heatRecovery = 0, asTestedAirChangesPerHour } = ventilation;
  const airChangesPerHour =
    ventilation.airChangesPerHour ??
    airChangesFromPermeability(airPermeability50 ?? 0, exposedArea, volumeM3, divisor);
  const onLeakage = airPermeability50 !== undefined && heatRecovery > 0;
  return {
    asDrawn: ventilationLoss(airChangesPerHour, volumeM3, heatRecovery),
    asTested:
      asTestedAirChangesPerHour === undefined ? null : ventilationLoss(asTestedAirChangesPerHour, volumeM3),
    findings: onLeakage
      ? [{ code: 'heat-recovery-on-leakage', heatRecovery, where: { key: 'ventilation.heatRecovery' } }]
      : [],
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
