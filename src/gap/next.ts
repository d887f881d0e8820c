/** What would decide it, or what to do now: codes; the sentences are in `words/`. */
import type { Tier, Verdict } from '../assessment.ts';
import type { Candidate } from './decide.ts';

export type NextStep =
  /** Nothing could be read from these nights. [K] */
  | { readonly code: 'next-wait-for-cold'; readonly needed: number }
  | { readonly code: 'next-more-nights'; readonly have: number; readonly needed: number }
  | {
      readonly code: 'next-heated-night' /** More nights without heat would narrow it still. */;
      readonly nightsHelp: boolean;
    }
  | { readonly code: 'next-metered-week' }
  /** However many more nights like these: how likely they would settle it [–]. */
  | { readonly code: 'next-not-more-nights'; readonly nights: number; readonly decides: number }
  /** The test that most likely settles it. */
  | ({ readonly code: 'next-best-test' } & Candidate)
  /** Even that one probably would not. */
  | ({ readonly code: 'next-stays-open' } & Candidate)
  /** Two ways contradict each other: until that is settled no test helps. */
  | { readonly code: 'next-settle-ways' }
  /** All nights that could count were left out by hand. */
  | { readonly code: 'next-nights-by-hand' }
  | { readonly code: 'next-give-design' }
  /** The cooling is known, but not the heat capacity that would turn it into watts. */
  | { readonly code: 'next-give-capacity' }
  | { readonly code: 'next-look-for-loss' }
  | { readonly code: 'next-keep-record' };

/** Below this the nights' own spread is the widest part of the interval. */
const ENOUGH_NIGHTS = 5;
/** Chances below which nobody should be sent for more nights, or be promised an answer [–]. PRACTICE. */
const HARDLY = 0.25;
const LIKELY = 0.5;

/** What stands in the way of a figure or a verdict beside too wide an interval. */
export type Bar = 'open to the neighbour' | 'ways apart' | 'nights out by hand';

interface Standing {
  readonly tier: Tier;
  readonly verdict: Verdict | null;
  readonly goodNights: number;
  readonly bar?: Bar | null;
}

/** @param candidates what further tests were found to be worth, the best first; none where that is not known */
export function nextSteps(
  stage: Standing,
  hasDesign: boolean,
  candidates: readonly Candidate[] = [],
): NextStep[] {
  if (stage.bar === 'open to the neighbour') return [];
  if (!hasDesign) return [{ code: 'next-give-design' }];
  if (stage.bar === 'ways apart') return [{ code: 'next-settle-ways' }];
  if (stage.verdict === 'undecided' && candidates.length > 0) return toDecide(candidates, stage.goodNights);
  switch (stage.verdict) {
    case 'meets':
      return [{ code: 'next-keep-record' }];
    case 'exceeds':
      return [{ code: 'next-look-for-loss' }];
    case 'undecided':
    case null:
      break;
  }
  if (stage.bar === 'nights out by hand') return [{ code: 'next-nights-by-hand' }];
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

function toDecide(candidates: readonly Candidate[], goodNights: number): NextStep[] {
  const [best] = candidates;
  const last: NextStep = { code: best.decides < LIKELY ? 'next-stays-open' : 'next-best-test', ...best };
  // Of so few nights nobody knows yet how they scatter.
  if (goodNights < ENOUGH_NIGHTS)
    return [{ code: 'next-more-nights', have: goodNights, needed: ENOUGH_NIGHTS }, last];
  const most = candidates
    .filter(({ test }) => test.kind === 'more-nights')
    .toSorted((a, b) => nightsOf(b) - nightsOf(a))
    .at(0);
  return most !== undefined && most.decides < HARDLY
    ? [{ code: 'next-not-more-nights', nights: nightsOf(most), decides: most.decides }, last]
    : [last];
}

const nightsOf = ({ test }: Candidate): number => (test.kind === 'more-nights' ? test.nights : 0);
