/** Watts carried over from a stage whose heat was metered. */

import { missingFromOne } from '../cooling/index.ts';
import { borrow, compareStages } from '../gap/index.ts';
import type { Measured } from './measured.ts';

/** A stage without metered heat takes the watts of the nearest stage that has it, if the mass is the same. */
export function withBorrowed(own: Measured, all: readonly Measured[]): Measured {
  const { pooled } = own;
  if (pooled === null || meteredOf(own) !== undefined) return own;
  const distance = (other: Measured) => Math.abs(all.indexOf(other) - all.indexOf(own));
  const lenders = all.flatMap((other) => {
    const metered = meteredOf(other);
    if (metered === undefined || other.pooled === null || missingFromOne(own.stage, other.stage).length > 0)
      return [];
    return [{ other, metered, ratio: compareStages(other.pooled, pooled).heatLossRatio }];
  });
  if (lenders.length === 0) return own;
  const [{ other, metered, ratio }] = lenders.toSorted((a, b) => distance(a.other) - distance(b.other));
  return { ...own, estimates: [borrow(metered, other.stage.name, ratio), ...own.estimates] };
}

const meteredOf = ({ estimates }: Measured) =>
  estimates.find(({ tier }) => tier === 'metered' || tier === 'heated-night');
