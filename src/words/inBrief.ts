/** What methods, tests and places are called where there is room for a word or two: on a ruler, in a table's column. */
import type { furtherTests, Method, StageResult } from '../assessment.ts';

/** Fourteen letters at most: what a ruler on a phone has room for beside a figure. */
export const methodsInBrief: Readonly<Record<Method, string>> = {
  network: 'Network',
  'effective-capacity': 'Effective mass',
  combined: 'Two together',
  'capacity-over-tau': 'Mass over rate',
  'heat-then-cool': 'Heated night',
  'heat-balance': 'Metered days',
  'state-space': 'Stochastic',
};

export const testsInBrief: Readonly<Record<(typeof furtherTests)[number], string>> = {
  'more-nights': 'More nights',
  'heated-night': 'Heated night',
  'metered-week': 'Metered week',
  'loggers-side-by-side': 'Side by side',
  'logger-next-door': 'Next door',
  'capacity-known': 'Mass looked at',
  'wind-logged': 'Wind logged',
};

/** What was looked at there. */
export const placesInBrief: Readonly<
  Record<NonNullable<StageResult['whereToLook']>[number]['kind'], string>
> = {
  room: 'time constant over the house’s',
  'room-level': 'from outdoors (0) to the house (1) by morning',
  void: 'from outdoors (0) to the house (1)',
  'void-moisture': 'water in its air above outdoors',
  surface: 'temperature factor of the surface',
};
