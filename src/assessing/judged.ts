/** A stage measured is set beside the design: gap, verdict, what would decide it, what is to be said. */

import { notesOnNights, type StageNights } from '../cooling/index.ts';
import { type Design, statedNeighbour } from '../fabric/index.ts';
import {
  agreementOf,
  type Bar,
  type Conditions,
  candidatesOf,
  DEFAULT_ALLOWANCE,
  disagreement,
  gapOf,
  measuredYear,
  nextSteps,
  nightsToShow,
  notesOn,
  plainDoubtWith,
} from '../gap/index.ts';
import { type HeatLossEstimate, headlineOf, type Outlook } from '../heatloss/index.ts';
import type { House } from '../house.ts';
import type { HouseRecord } from '../series/record.ts';
import { drawnLike } from './asDrawn.ts';
import type { StageEvidence } from './evidence.ts';
import type { Measured } from './measured.ts';

/** @param outlooks what further tests would leave of the network's doubt */
export function assessStage(
  measured: Measured,
  house: House,
  record: HouseRecord,
  design: Design | null,
  outlooks: () => readonly Outlook[],
): StageEvidence {
  const { stage, estimates } = measured;
  const used = stage.nights.filter((night) => night.used);
  const { tier, estimate: headline } = headlineOf(estimates);
  const finished = stage.complete && stage.missing.length === 0;
  const drawn = design && drawnLike(house, design);
  const contradiction = disagreement(estimates);
  const agree = contradiction === null;
  const gap =
    headline !== null && design !== null && drawn !== null && drawn > 0
      ? gapOf({ house, design, heatLoss: headline.heatLossCoefficient, drawn, finished, agree })
      : null;
  const narrower = gap?.verdict === 'undecided' && agree && leadsTheNetwork(headline);
  const candidates =
    narrower && gap !== null ? candidatesOf(outlooks(), gap.ratio, house.allowance ?? DEFAULT_ALLOWANCE) : [];
  const plan = measured.pooled && nightsToShow(plainDoubtWith(measured.pooled, measured.pooled));
  return {
    ...measured,
    annual: headline && measuredYear(house, design, { heatLoss: headline.heatLossCoefficient, finished }),
    nightsToShow: plan,
    agreement: agreementOf(estimates, conditionsOf(house, record, design)),
    tier,
    headline,
    gap,
    candidates,
    next: nextSteps(
      { tier, verdict: gap?.verdict ?? null, goodNights: used.length, bar: barOf(house, stage, agree) },
      design !== null,
      candidates,
    ),
    notes: [
      ...(house.conditions?.openToNeighbour ? [{ code: 'open-to-neighbour' } as const] : []),
      ...notesOn(stage, used, finished, record),
      ...notesOnNights(measured.leaveOneOut, measured.laterStarts, measured.rooms),
      ...(contradiction === null
        ? []
        : [{ code: 'methods-disagree', methods: contradiction.map(({ method }) => method) } as const]),
      ...measured.unanswered,
      ...(measured.apart?.kind === 'not told apart' ? [measured.apart.why] : []),
      ...(house.stages?.length === 1 ? [{ code: 'only-one-stage', plan: plan ?? [] } as const] : []),
      ...(gap !== null && drawn !== design?.heatLoss
        ? [{ code: 'compared-with-design-as-tested' } as const]
        : []),
    ],
  };
}

function barOf({ conditions }: House, { nights }: StageNights, agree: boolean): Bar | null {
  if (conditions?.openToNeighbour) return 'open to the neighbour';
  if (!agree) return 'ways apart';
  const byHand = nights.some(({ reasons }) => reasons.some(({ code }) => code === 'left-out-by-hand'));
  return byHand && !nights.some(({ used }) => used) ? 'nights out by hand' : null;
}

/** Only its doubt is taken apart, so that it is known what would narrow it. */
const leadsTheNetwork = (headline: HeatLossEstimate | null): boolean =>
  headline !== null && (headline.method === 'combined' || headline.method === 'network');

/** What of the house bears on whether its ways to the heat loss can agree. */
function conditionsOf(house: House, { rooms }: HouseRecord, design: Design | null): Conditions {
  const logged = rooms.some(({ place }) => place === 'adjacent');
  const stated = statedNeighbour(house) !== null;
  return {
    neighbour: (design?.toNeighbours ?? 0) === 0 ? null : logged ? 'logged' : stated ? 'stated' : 'not known',
    wetTradesWithinWeeks: house.conditions?.wetTradesWithinWeeks ?? null,
  };
}
