/** The smallest change that could have been seen, and how many nights would show a smaller one. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures, smallestChangeSentence } from '../../src/words/index.ts';
import { noted } from '../gap/noted.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import type { ComparisonProps } from './Comparison.tsx';
import { NightsToShow } from './NightsToShow.tsx';

/** The notes that are told here. */
export const seenCodes = [
  'smallest-change',
  'nights-to-show',
  'side-without-nights',
  'shared-nights-left-out',
];

export function WhatCanBeSeen({ comparison, stages }: ComparisonProps) {
  const { nightsToShow: plan, before, after, notes } = comparison;
  const smallest = smallestChangeSentence(comparison);
  const about = noted(notes, 'side-without-nights', 'shared-nights-left-out');
  if (smallest === null && !plan && about.length === 0) return null;
  const usedIn = (name: string) => usedNights(stages.find((stage) => stage.name === name));
  const have = comparison.weather
    ? [comparison.weather.before.nights, comparison.weather.after.nights]
    : [usedIn(before), usedIn(after)];
  return (
    <>
      <h3>What these nights can show</h3>
      {smallest === null ? null : (
        <p>{tied(`${smallest} There are ${have[0]} before and ${figures.count(have[1], 'night')} after.`)}</p>
      )}
      <ProblemList problems={about} />
      {plan ? <NightsToShow plan={plan} before={have[0]} after={have[1]} /> : null}
    </>
  );
}

const usedNights = (stage: StageResult | undefined) => stage?.nights.filter(({ used }) => used).length ?? 0;
