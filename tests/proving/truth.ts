/** What is true of a house by definition: its heat loss as built, and its parts. */
import { areaOf, type Deviations, type Plan, transmittances, voidFactor } from './plan.ts';
import type { Run } from './simulate.ts';
import type { Span } from './use.ts';

/** All in W/K. */
export interface HeatLoss {
  readonly fabric: number;
  readonly bridges: number;
  readonly leakage: number;
  readonly whole: number;
  /** Area times transmittance, by element. */
  readonly elements: Readonly<Record<string, number>>;
}

/**
 * Transmittance times area of every element with the surface resistances of ISO 6946, bridges, and 0.33 n V. Towards
 * a heated neighbour nothing counts, towards an unheated space the drawn temperature factor of it.
 */
export function heatLoss(plan: Plan, built: Deviations, airChangesPerHour: number): HeatLoss {
  const elements: Record<string, number> = {};
  const factors = new Map(plan.elements.map((element) => [element.name, factorOf(element)]));
  for (const [name, uValue] of transmittances(plan, built))
    elements[name] = uValue * areaOf(plan, name) * (factors.get(name) ?? 1);
  const fabric = Object.values(elements).reduce((sum, part) => sum + part, 0);
  const bridges = plan.bridges * built.bridges;
  const volume = plan.rooms.reduce((sum, room) => sum + room.volume, 0);
  const leakage = 0.33 * volume * airChangesPerHour;
  return { fabric, bridges, leakage, whole: fabric + bridges + leakage, elements };
}

const factorOf = ({ to, temperatureFactor }: Plan['elements'][number]) =>
  to === 'adjacent' ? 0 : to === 'void' ? (temperatureFactor ?? voidFactor) : 1;

/**
 * Mean leakage over the hours from 18:00 to 08:00 within the span [air changes per hour].
 *
 * @param fromUtc local time less UTC [h]
 */
export const nightLeakage = (run: Run, span: Span, fromUtc = 0) =>
  meanLeakage(run, span, (time) => {
    const hour = (time / 3600 + fromUtc + 24) % 24;
    return hour < 8 || hour >= 18;
  });

/** The same over all hours. */
export const wholeDayLeakage = (run: Run, span: Span) => meanLeakage(run, span, () => true);

function meanLeakage(run: Run, span: Span, counts: (time: number) => boolean): number {
  let sum = 0;
  let count = 0;
  run.airChangesPerHour.forEach((changes, k) => {
    const time = run.start + k * run.step;
    if (time < span.from || time >= span.to || !counts(time)) return;
    sum += changes;
    count++;
  });
  return sum / count;
}
