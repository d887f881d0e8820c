/** One stage over another: the ratio, what it saves, whether the weather was alike, and what could have been seen. */
import type { Assessment, StageResult } from '../../src/assessment.ts';
import { notedOtherwise } from '../gap/noted.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Term } from '../parts/Term.tsx';
import { ratioMarks } from './stageMarks.ts';
import { WeatherBeside, weatherCodes } from './WeatherBeside.tsx';
import { seenCodes, WhatCanBeSeen } from './WhatCanBeSeen.tsx';
import { savingCodes, WhatItSaves } from './WhatItSaves.tsx';

export type Compared = Assessment['comparisons'][number];

export interface ComparisonProps {
  readonly comparison: Compared;
  readonly stages: readonly StageResult[];
}

export function Comparison({ comparison, stages }: ComparisonProps) {
  const { before, after, notes } = comparison;
  const marks = ratioMarks(comparison);
  return (
    <section class="comparison">
      <h2>
        “{after}” over “{before}”
      </h2>
      {marks.length === 0 ? null : (
        <>
          <p>
            At 1 nothing changed. A smaller <Term of="heat loss" /> and a longer <Term of="time constant" />{' '}
            are the better house.
          </p>
          <Rule title={`${after} over ${before}`} unit="ratio" marks={marks} />
        </>
      )}
      <ProblemList problems={notedOtherwise(notes, ...savingCodes, ...weatherCodes, ...seenCodes)} />
      <WhatItSaves comparison={comparison} />
      <WeatherBeside comparison={comparison} />
      <WhatCanBeSeen comparison={comparison} stages={stages} />
    </section>
  );
}
