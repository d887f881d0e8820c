/** Which estimate leads, and what tier of heat information it had. */
import type { Method, Tier } from '../assessment.ts';
import type { HeatLossEstimate } from './estimate.ts';

const order: readonly { readonly method: Method; readonly tier: Tier }[] = [
  { method: 'heat-balance', tier: 'metered' },
  { method: 'heat-then-cool', tier: 'heated-night' },
  { method: 'capacity-over-tau', tier: 'loggers' },
];

/** The first method of the order that gave a figure; tier "none" and no estimate where none did. */
export function headlineOf(estimates: readonly HeatLossEstimate[]): {
  readonly tier: Tier;
  readonly estimate: HeatLossEstimate | null;
} {
  for (const { method, tier } of order) {
    const estimate = estimates.find((it) => it.method === method);
    if (estimate !== undefined) return { tier, estimate };
  }
  return { tier: 'none', estimate: null };
}
