/** Condensation within a build-up over a mean year. */
import { sum } from 'simple-statistics';
import { saturationPressure } from '../../air/index.ts';
import type { DesignElement } from '../../house.ts';
import type { Beyond } from '../surfaces.ts';
import { type InsideAir, type MonthlyAir, type MonthOfAir, monthsOfAir } from './climate.ts';
import type { MoistureFinding } from './finding.ts';
import { vapourFlow } from './flow.ts';
import { type MoistureSection, moistureLayersFrom } from './layers.ts';
import { type MoistureMonth, moistureOfMonth } from './month.ts';
import { type Plane, planesOf, temperatureAt, totalResistance } from './planes.ts';
import { judgedYear, type MoistureYear } from './verdict.ts';

export type MoistureResult =
  | ({ readonly calculated: true } & MoistureYear)
  | { readonly calculated: false; readonly findings: readonly MoistureFinding[] };

/**
 * Interstitial condensation of an element by its layers in `house.json`; or the layers that do not say enough.
 *
 * @param beyond what the outer face meets: for a floor over an aired crawl space "void", not "ground"
 * @see ISO 13788:2012, clause 6 (MEMORY throughout: the text could not be read)
 */
export function moistureOf(
  buildUp: NonNullable<DesignElement['buildUp']>,
  outside: MonthlyAir,
  inside: InsideAir,
  beyond: Beyond = 'outside',
): MoistureResult {
  const input = moistureLayersFrom(buildUp, beyond);
  if (!input.known) return { calculated: false, findings: input.findings };
  const year = moistureYear(input.section, monthsOfAir(outside, inside));
  return { calculated: true, ...year, findings: [...year.findings, ...input.findings] };
}

/**
 * The same from layers in SI.
 *
 * @param air twelve months, from January
 */
export function moistureYear(section: MoistureSection, air: readonly MonthOfAir[]): MoistureYear {
  const planes = planesOf(section);
  const steady = air.map((month) => steadyMonth(planes, totalResistance(planes, section), month));
  const start = startingMonth(steady.map(condensesFromDry));
  let mass: readonly number[] = planes.map(() => 0);
  const months = [...steady.slice(start), ...steady.slice(0, start)].map((month): MoistureMonth => {
    const before = mass;
    const moisture = moistureOfMonth(month, before, month.duration);
    mass = moisture.mass;
    return { ...month, ...moisture, gained: mass.map((it, at) => it - before[at]) };
  });
  return judgedYear(section, planes, months);
}

type SteadyMonth = MonthOfAir &
  Pick<MoistureMonth, 'temperature' | 'saturation'> & { readonly vapourThickness: readonly number[] };

function steadyMonth(planes: readonly Plane[], whole: number, air: MonthOfAir): SteadyMonth {
  const { insideTemperature, outsideTemperature } = air;
  const temperature = planes.map((it) => temperatureAt(it, whole, insideTemperature, outsideTemperature));
  const vapourThickness = planes.map((it) => it.vapourThickness);
  return { ...air, temperature, saturation: temperature.map(saturationPressure), vapourThickness };
}

function condensesFromDry(month: SteadyMonth): boolean {
  return sum([...vapourFlow({ ...month, wet: month.temperature.map(() => false) }).gathering]) > 0;
}

/**
 * The first month that condenses after the longest run of months that do not; January when all or none do.
 *
 * @see ISO 13788:2012, clause 6 (MEMORY)
 */
function startingMonth(condenses: readonly boolean[]): number {
  const dryBefore = condenses.map((it, month) => (it ? dryMonthsBefore(condenses, month) : -1));
  return Math.max(0, dryBefore.indexOf(Math.max(...dryBefore)));
}

function dryMonthsBefore(condenses: readonly boolean[], month: number): number {
  let dry = 0;
  while (dry < 12 && !condenses[(month - 1 - dry + 12) % 12]) dry += 1;
  return dry;
}
