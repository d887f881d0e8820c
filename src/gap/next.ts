/** What would decide it, or what to do now: codes; the sentences are in `words/`. */
import type { Tier, Verdict } from '../assessment.ts';

export type NextStep =
  /** Nothing could be read from these nights. [K] */
  | { readonly code: 'next-wait-for-cold'; readonly needed: number }
  | { readonly code: 'next-more-nights'; readonly have: number; readonly needed: number }
  | { readonly code: 'next-heated-night' }
  | { readonly code: 'next-metered-week' }
  | { readonly code: 'next-give-design' }
  | { readonly code: 'next-look-for-loss' }
  | { readonly code: 'next-keep-record' };

/** Below this the nights' own spread is the widest part of the interval. */
const ENOUGH_NIGHTS = 5;

export function nextSteps(
  stage: { readonly tier: Tier; readonly verdict: Verdict | null; readonly goodNights: number },
  hasDesign: boolean,
): NextStep[] {
  if (!hasDesign) return [{ code: 'next-give-design' }];
  switch (stage.verdict) {
    case 'meets':
      return [{ code: 'next-keep-record' }];
    case 'exceeds':
      return [{ code: 'next-look-for-loss' }];
    case 'undecided':
    case null:
      break;
  }
  if (stage.tier === 'none') return [{ code: 'next-wait-for-cold', needed: 3 }];
  const nights: NextStep[] =
    stage.tier === 'loggers' && stage.goodNights < ENOUGH_NIGHTS
      ? [{ code: 'next-more-nights', have: stage.goodNights, needed: ENOUGH_NIGHTS }]
      : [];
  if (stage.verdict === null) return nights;
  return [
    ...nights,
    stage.tier === 'loggers' ? { code: 'next-heated-night' } : { code: 'next-metered-week' },
  ];
}
