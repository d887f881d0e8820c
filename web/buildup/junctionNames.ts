/** The lines where parts of a house meet, as one would say them on site. */
import type { JunctionKind } from '../../src/house.ts';

export const junctionNames: Readonly<Record<JunctionKind, string>> = {
  lintel: 'Over windows and doors',
  sill: 'Under windows',
  jamb: 'Beside windows and doors',
  'ground-floor': 'Wall to ground floor',
  'intermediate-floor': 'Wall to upper floor',
  eaves: 'Eaves, cold roof space',
  'eaves-of-warm-roof': 'Eaves, insulated slope',
  gable: 'Gable, cold roof space',
  'gable-of-warm-roof': 'Gable, insulated slope',
  ridge: 'Ridge, insulated slope',
  corner: 'Corner of walls',
  'inner-corner': 'Corner that points inward',
  'party-wall': 'Wall to party wall',
};
