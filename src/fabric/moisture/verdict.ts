/** What a year's condensation amounts to. */
import { sum } from 'simple-statistics';
import { saturationPressure } from '../../air/index.ts';
import type { Between, MoistureFinding } from './finding.ts';
import type { MoistureSection } from './layers.ts';
import type { MoistureMonth } from './month.ts';
import type { Plane } from './planes.ts';

export interface MoistureYear {
  readonly outcome: 'stays dry' | 'dries out' | 'accumulates';
  /** From the inside surface to the outside surface. */
  readonly planes: readonly Plane[];
  /** Twelve, from the first that condenses after the dry season; from January when none does. */
  readonly months: readonly MoistureMonth[];
  /** Position in `months` of the end of the month in which the whole build-up holds most. */
  readonly peak: { readonly at: number; readonly mass: number };
  /** The plane that holds most in any month, by position, and how much [kg/m²]; null when all stay dry. */
  readonly wettest: { readonly plane: number; readonly mass: number } | null;
  readonly findings: readonly MoistureFinding[];
}

/** Above this [kg/m²] water may run off a surface that does not soak it up. ISO 13788:2012 (MEMORY). */
const runsOffAbove = 0.2;

/** The year with its outcome, its peak, and what to say of it. */
export function judgedYear(
  section: MoistureSection,
  planes: readonly Plane[],
  months: readonly MoistureMonth[],
): MoistureYear {
  const totals = months.map((it) => sum([...it.mass]));
  const mass = Math.max(...totals);
  const year = {
    outcome: outcomeOf(mass, totals[totals.length - 1]),
    planes,
    months,
    peak: { at: totals.indexOf(mass), mass },
    wettest: mass > 0 ? wettestPlane(months) : null,
  };
  return { ...year, findings: findingsOf(section, year, totals) };
}

function outcomeOf(most: number, atEnd: number): MoistureYear['outcome'] {
  if (most === 0) return 'stays dry';
  return atEnd === 0 ? 'dries out' : 'accumulates';
}

function wettestPlane(months: readonly MoistureMonth[]): { plane: number; mass: number } {
  const most = months[0].mass.map((_, at) => Math.max(...months.map((it) => it.mass[at])));
  const mass = Math.max(...most);
  return { plane: most.indexOf(mass), mass };
}

function findingsOf(
  { layers }: MoistureSection,
  { outcome, planes, months, peak, wettest }: Omit<MoistureYear, 'findings'>,
  totals: readonly number[],
): MoistureFinding[] {
  const where = { key: 'layers' };
  const findings: MoistureFinding[] = [];
  const dew = months.filter((it) => it.insidePressure > saturationPressure(it.temperature[0]));
  if (dew.length > 0)
    findings.push({ code: 'surface-condensation', months: dew.map((it) => it.month), where });
  if (wettest === null) findings.push({ code: 'condensation-none', where });
  else {
    const { inner, outer } = planes[wettest.plane];
    const at: Between = { inner: layers[inner].name, outer: layers[outer].name };
    if (outcome === 'accumulates')
      findings.push({ code: 'condensation-stays', mass: totals[totals.length - 1], at, where });
    else {
      const dry = totals.findIndex((it, i) => i > peak.at && it === 0);
      const [month, dryMonth] = [months[peak.at].month, months[dry].month];
      findings.push({ code: 'condensation-dries', mass: peak.mass, month, dryMonth, at, where });
    }
    if (wettest.mass > runsOffAbove)
      findings.push({ code: 'condensation-may-run', mass: wettest.mass, limit: runsOffAbove, at, where });
  }
  return [
    ...findings,
    { code: 'moisture-airflow-not-covered', where },
    { code: 'moisture-liquid-not-covered', where },
  ];
}
