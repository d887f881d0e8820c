/** Design and measurement side by side, one stage at a time: how large the gap is, where it could sit, what would tell. */
import { useRoute } from 'preact-iso';
import type { Assessment, StageResult } from '../../src/assessment.ts';
import { DEFAULT_ALLOWANCE } from '../../src/gap/verdict.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { answerSentence, stageAnswer } from '../../src/words/answer.ts';
import { gapSentence } from '../../src/words/index.ts';
import { DrawBuildUps } from '../parts/DrawBuildUps.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { AirApart } from './AirApart.tsx';
import { Doubts } from './Doubts.tsx';
import { ElementByElement } from './ElementByElement.tsx';
import { FurtherTests } from './FurtherTests.tsx';
import type { TheDesign } from './gapMarks.ts';
import { MeanUValue } from './MeanUValue.tsx';
import { StageChooser } from './StageChooser.tsx';
import { SurfaceLoggers } from './SurfaceLoggers.tsx';
import { WaysAgree } from './WaysAgree.tsx';
import { WhereToLook } from './WhereToLook.tsx';
import { WholeHouse } from './WholeHouse.tsx';
import { YearBeside } from './YearBeside.tsx';
import './gap.css';

export function GapPage() {
  const { params, query } = useRoute();
  const { id } = params;
  return (
    <HouseFrame id={id} here="The gap">
      {({ house }, { stages, design }) => {
        const stage = stages.find(({ name }) => name === query.stage) ?? stages.at(-1);
        return stage === undefined ? (
          <p class="answer">There is no stage with readings yet, so nothing can be set beside the design.</p>
        ) : (
          <>
            <StageChooser
              names={stages.map(({ name }) => name).toReversed()}
              shown={stage.name}
              href={(name) => `/house/${id}/gap?stage=${encodeURIComponent(name)}`}
            />
            <TheGap
              key={stage.name}
              stage={stage}
              design={design}
              allowance={house.allowance ?? DEFAULT_ALLOWANCE}
            />
            {design === null ? <DrawBuildUps house={id} /> : null}
          </>
        );
      }}
    </HouseFrame>
  );
}

interface TheGapProps {
  readonly stage: StageResult;
  readonly design: Assessment['design'];
  readonly allowance: number;
}

function TheGap({ stage, design, allowance }: TheGapProps) {
  const inWords = stage.gap && gapSentence(stage.gap);
  return (
    <>
      <p class="answer">{tied(answerSentence(stageAnswer(stage, design)))}</p>
      {inWords === null ? null : <p>{tied(inWords)}</p>}
      {design === null || stage.gap === null ? (
        <NothingBeside stage={stage} />
      ) : (
        <Beside stage={stage} design={design} allowance={allowance} />
      )}
      <WhereToLook stage={stage} />
      <WaysAgree stage={stage} design={design} />
      <YearBeside stage={stage} design={design} />
    </>
  );
}

const Beside = ({ stage, design, allowance }: TheGapProps & { readonly design: TheDesign }) => (
  <>
    <WholeHouse stage={stage} design={design} allowance={allowance} />
    <Doubts stage={stage} />
    <FurtherTests stage={stage} allowance={allowance} />
    <MeanUValue stage={stage} design={design} />
    <ElementByElement stage={stage} />
    <SurfaceLoggers stage={stage} />
    <AirApart stage={stage} design={design} />
  </>
);

/** One of both sides is not known. */
const NothingBeside = ({ stage }: { readonly stage: StageResult }) => (
  <>
    {stage.next.length === 0 ? null : (
      <section>
        <h2>What would give a gap</h2>
        <ProblemList problems={stage.next} />
      </section>
    )}
    <Doubts stage={stage} />
    <SurfaceLoggers stage={stage} />
  </>
);
