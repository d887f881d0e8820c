/** What is true of a house by definition: its heat loss as built, and its parts. */
import { areaOf, type Deviations, type Plan, transmittances } from './plan.ts';
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

/** Transmittance times area of every element with the surface resistances of ISO 6946, bridges, and 0.33 n V. */
export function heatLoss(plan: Plan, built: Deviations, airChangesPerHour: number): HeatLoss {
  const elements: Record<string, number> = {};
  for (const [name, uValue] of transmittances(plan, built)) elements[name] = uValue * areaOf(plan, name);
  const fabric = Object.values(elements).reduce((sum, part) => sum + part, 0);
  const bridges = plan.bridges * built.bridges;
  const volume = plan.rooms.reduce((sum, room) => sum + room.volume, 0);
  const leakage = 0.33 * volume * airChangesPerHour;
  return { fabric, bridges, leakage, whole: fabric + bridges + leakage, elements };
}

/** Mean leakage over the hours from 18:00 to 08:00 within the span, local time being UTC. */
export function nightLeakage(run: Run, span: Span): number {
  let sum = 0;
  let count = 0;
  run.airChangesPerHour.forEach((changes, k) => {
    const time = run.start + k * run.step;
    const hour = (time / 3600) % 24;
    if (time < span.from || time >= span.to || (hour >= 8 && hour < 18)) return;
    sum += changes;
    count++;
  });
  return sum / count;
}
