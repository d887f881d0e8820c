/** What an element of the design is to the eye: where in the cut through the house it stands. */
import type { Assessment } from '../../assessment.ts';
import type { DesignElement } from '../../house.ts';

export type DrawnElement = NonNullable<Assessment['design']>['elements'][number];

export type ElementKind = 'wall' | 'opening' | 'roof' | 'ceiling' | 'floor' | 'neighbour';

/** What an element is, from what the design says of it. */
export function kindOf(drawn: DrawnElement, designed: DesignElement | undefined): ElementKind {
  const facing = designed?.buildUp?.facing;
  const tilt = designed?.tiltDeg;
  if (drawn.to === 'adjacent') return 'neighbour';
  if (designed?.gValue !== undefined || /window|door|glaz|opening/i.test(drawn.name)) return 'opening';
  if (drawn.to === 'ground' || facing === 'down') return 'floor';
  if (/ceiling|loft|attic/i.test(drawn.name)) return 'ceiling';
  if (/floor|slab/i.test(drawn.name)) return 'floor';
  if (drawn.to === 'void') return 'ceiling';
  if (facing === 'up' || (tilt !== undefined && tilt < 60) || /roof|rafter/i.test(drawn.name))
    return tilt !== undefined && tilt < 10 ? 'ceiling' : 'roof';
  return 'wall';
}
