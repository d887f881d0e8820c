/** Stages that overlap are compared by the nights that only one of them has. */
import { type JudgedNight, type PooledTimeConstant, poolTimeConstants } from '../../cooling/index.ts';

/** A side of a comparison. */
export interface Side {
  readonly nights: readonly JudgedNight[];
  readonly pooled: PooledTimeConstant | null;
}

export interface Sides {
  readonly before: Side;
  readonly after: Side;
  /** Dates of nights used that both had. */
  readonly shared: readonly string[];
}

/** @param differenceSd as the stages were pooled with [K] */
export function withoutShared(before: Side, after: Side, differenceSd: number): Sides {
  const dates = ({ nights }: Side) => nights.filter(({ used }) => used).map(({ night }) => night.date);
  const shared = dates(before).filter((date) => dates(after).includes(date));
  if (shared.length === 0) return { before, after, shared };
  const alone = ({ nights }: Side): Side => {
    const own = nights.filter(({ night }) => !shared.includes(night.date));
    return { nights: own, pooled: poolTimeConstants(own, differenceSd) };
  };
  return { before: alone(before), after: alone(after), shared };
}
