/** What would decide it, or what to do now: codes; the sentences are in `words/`. */
import type { Tier, Verdict } from '../assessment.ts';

export type NextStep =
  /** Nothing could be read from these nights. [K] */
  | { readonly code: 'next-wait-for-cold'; readonly needed: number }
  | { readonly code: 'next-more-nights'; readonly have: number; readonly needed: number }
  | {
      readonly code: 'next-heated-night' /** More nights without heat would narrow it still. */;
      readonly nightsHelp: boolean;
    }
  | { readonly code: 'next-metered-week' }
  | { readonly code: 'next-give-design' }
  /** The cooling is known, but not the heat capacity that would turn it into watts. */
  | { readonly code: 'next-give-capacity' }
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
  if (stage.tier === 'none' && stage.goodNights === 0) return [{ code: 'next-wait-for-cold', needed: 3 }];
  if (stage.tier === 'none' && stage.goodNights > 1) return [{ code: 'next-give-capacity' }];
  const nightsHelp = (stage.tier === 'loggers' || stage.tier === 'none') && stage.goodNights < ENOUGH_NIGHTS;
  const nights: NextStep[] = nightsHelp
    ? [{ code: 'next-more-nights', have: stage.goodNights, needed: ENOUGH_NIGHTS }]
    : [];
  if (stage.verdict === null) return nights;
  return [
    ...nights,
    stage.tier === 'loggers' ? { code: 'next-heated-night', nightsHelp } : { code: 'next-metered-week' },
  ];
}
