/** What each way to the heat loss rests on beside the loggers, which all of them share. */
import type { HeatLossEstimate } from '../heatloss/index.ts';

export const sources = ['drawing', 'free nights', 'heated night', 'metered days'] as const;
export type Source = (typeof sources)[number];

/**
 * The network and the effective heat capacity ask the same design of the same nights, and "combined" is their mean.
 * Metered heat that the network uses is that of the heated nights or of the metered days.
 */
export function sourcesOf({ method, tier, notes }: HeatLossEstimate): readonly Source[] {
  const metered: readonly Source[] =
    tier === 'metered' ? ['metered days'] : tier === 'heated-night' ? ['heated night'] : [];
  const borrowed = notes.some(({ code }) => code === 'borrowed-from-stage');
  switch (method) {
    case 'network':
    case 'effective-capacity':
    case 'combined':
    case 'capacity-over-tau':
      return ['drawing', 'free nights', ...metered];
    case 'heat-then-cool':
    case 'heat-balance':
    case 'state-space':
      return [...(borrowed ? (['free nights'] as const) : []), ...metered];
  }
}

export const shared = (a: HeatLossEstimate, b: HeatLossEstimate): Source[] =>
  sources.filter((source) => sourcesOf(a).includes(source) && sourcesOf(b).includes(source));

/** The most that share nothing with one another, the earlier ones of the list first. */
export function sharingNothing(estimates: readonly HeatLossEstimate[]): readonly HeatLossEstimate[] {
  const [first, ...rest] = estimates;
  if (first === undefined) return [];
  const withIt = [first, ...sharingNothing(rest.filter((other) => shared(first, other).length === 0))];
  const without = sharingNothing(rest);
  return without.length > withIt.length ? without : withIt;
}
