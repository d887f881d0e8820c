/** Before and after: what changed and how sure that is, whether the weather was alike, and the stages by their dates. */
import { useRoute } from 'preact-iso';
import type { Assessment } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { changeSentence } from '../../src/words/answer.ts';
import { type AssessedHouse, useByHand } from '../nights/useByHand.ts';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { Term } from '../parts/Term.tsx';
import { Comparison } from '../stages/Comparison.tsx';
import { EachStage } from '../stages/EachStage.tsx';
import { StageDates } from '../stages/StageDates.tsx';
import '../stages/stages.css';

export function Stages() {
  const { id } = useRoute().params;
  return (
    <HouseFrame id={id} here="Stages">
      {(house, assessment) => <AllStages first={{ house, assessment }} />}
    </HouseFrame>
  );
}

function AllStages({ first }: { readonly first: AssessedHouse }) {
  const byHand = useByHand(first);
  const { stages, comparisons } = byHand.assessment;
  return (
    <>
      {comparisons.length === 0 ? <OneStage /> : <Answer comparisons={comparisons} />}
      {comparisons.map((comparison) => (
        <Comparison
          key={`${comparison.before} ${comparison.after}`}
          comparison={comparison}
          stages={stages}
        />
      ))}
      <EachStage stages={stages} />
      <StageDates byHand={byHand} />
    </>
  );
}

const Answer = ({ comparisons }: Pick<Assessment, 'comparisons'>) => (
  <>
    {comparisons.map((comparison) => (
      <p key={`${comparison.before} ${comparison.after}`} class="answer">
        {tied(changeSentence(comparison))}
      </p>
    ))}
  </>
);

const OneStage = () => (
  <>
    <p class="answer">There is one stage only, so there is nothing to compare it with yet.</p>
    <p>
      A <Term of="stage" /> is a span of days in which the house stood as it was. Name a second one, such as
      before and after sealing, and the two are set side by side.
    </p>
  </>
);
