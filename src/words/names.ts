/** What the closed lists are called when spoken of. */
import type { Method, Verdict } from '../assessment.ts';

export const methodNames: Readonly<Record<Method, string>> = {
  network: 'from the design’s network',
  'effective-capacity': 'from the cooling rate and the effective heat capacity',
  combined: 'from the network and the effective heat capacity together',
  'capacity-over-tau': 'from the cooling rate and the heat capacity',
  'heat-then-cool': 'from a heated night',
  'heat-balance': 'from metered days',
  'state-space': 'from the stochastic model',
};

export const verdictSentences: Readonly<Record<Verdict, string>> = {
  meets: 'It performs as drawn, within the allowance.',
  exceeds: 'It loses more than drawn.',
  undecided: 'Whether it performs as drawn cannot be told yet.',
};
