/** Which estimate leads. */
import type { Tier } from '../assessment.ts';
import type { HeatLossEstimate } from './estimate.ts';

/** Of loggers alone two ways through the network together; with known heat the network itself; without it the rest. */
const order: readonly HeatLossEstimate['method'][] = [
  'combined',
  'network',
  'heat-balance',
  'heat-then-cool',
  'effective-capacity',
  'capacity-over-tau',
];

/** The first method of the order that gave a figure; tier "none" and no estimate where none did. */
export function headlineOf(estimates: readonly HeatLossEstimate[]): {
  readonly tier: Tier;
  readonly estimate: HeatLossEstimate | null;
} {
  for (const method of order) {
    const estimate = estimates.find((it) => it.method === method);
    if (estimate !== undefined) return { tier: estimate.tier, estimate };
  }
  return { tier: 'none', estimate: null };
}
