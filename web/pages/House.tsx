/** One house, the answer first: a sentence, the ruler that shows it, the nights, what to do next, what changed. */
import { lazy, useRoute } from 'preact-iso';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Assessment, Message, NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import {
  answerSentence,
  changeSentence,
  coolingSentence,
  foretoldSentence,
  lastNight,
  lastReadingSentence,
  nightSentence,
  stageAnswer,
} from '../../src/words/answer.ts';
import { changeOfYearSentence } from '../../src/words/index.ts';
import { getNights } from '../api.ts';
import { AddHere } from '../house/AddHere.tsx';
import { AllNights } from '../house/AllNights.tsx';
import { LastNight } from '../house/LastNight.tsx';
import { Undecided } from '../house/Undecided.tsx';
import { useNow } from '../house/useNow.ts';
import { Watched } from '../house/Watched.tsx';
import { DrawBuildUps } from '../parts/DrawBuildUps.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { Term } from '../parts/Term.tsx';
import { useLoaded } from '../useLoaded.ts';
import '../house/answer.css';
import { meanOutside } from '../../src/sheet/drawing/meanOutside.ts';
import { heatLossMarks, timeConstantMarks } from '../../src/sheet/drawing/rules.ts';
import { TakeWithYou } from './TakeWithYou.tsx';

/** Below everything else, so that the answer does not wait for it. */
const WhoMayLook = lazy(async () => (await import('../access/WhoMayLook.tsx')).WhoMayLook);

export function HousePage() {
  const { id } = useRoute().params;
  return (
    <HouseFrame
      id={id}
      here="The answer"
      foot={(house, again) => (
        <>
          {house.assessment === null && !house.invented ? <AddHere id={house.id} /> : null}
          <Watched house={house.id} />
          <TakeWithYou house={house} again={again} />
          <WhoMayLook id={house.id} name={house.name} invented={house.invented} />
        </>
      )}
    >
      {(house, assessment) => <TheAnswer house={house} assessment={assessment} />}
    </HouseFrame>
  );
}

function TheAnswer({ house, assessment }: { house: HouseDetail; assessment: Assessment }) {
  const { loaded } = useLoaded((signal) => getNights(house.id, signal), `${house.id} ${house.lastReading}`);
  const curves = loaded.kind === 'loaded' ? loaded.value.curves : null;
  const night = lastNight(assessment);
  const curve = curves?.find(({ date }) => date === night?.date);
  const stage = assessment.stages.at(-1);
  return (
    <>
      <Answer house={house} assessment={assessment} night={night} curve={curve} />
      {house.invented ? null : <AddHere id={house.id} />}
      {assessment.design === null ? <DrawBuildUps house={house.id} /> : null}
      <MeasuredAndDrawn assessment={assessment} />

      {night === null || night.from === null ? null : curve !== undefined ? (
        <LastNight house={house.id} night={night} curve={curve} timeZone={house.house.location.timeZone} />
      ) : curves === null ? (
        <Skeleton height={420} />
      ) : null}

      {stage === undefined ? null : <Undecided house={house.id} stage={stage} />}
      <Changes assessment={assessment} />

      <AllNights
        loaded={loaded}
        nights={assessment.stages.flatMap(({ nights }) => nights)}
        touch="Touch one to open it."
        href={(date) => `/house/${house.id}/nights?night=${date}`}
      />

      <HowSlowly assessment={assessment} />
      <Messages title="Please check" messages={assessment.warnings} />
      <Messages title="To be borne in mind" messages={stage?.notes ?? []} />
    </>
  );
}

interface AnswerProps {
  readonly house: Pick<HouseDetail, 'lastReading'>;
  readonly assessment: Assessment;
  readonly night: NightResult | null;
  readonly curve: NightCurve | undefined;
}

/** The night first, as everybody has slept through it; then what all nights together say. */
export function Answer({ house, assessment, night, curve }: AnswerProps) {
  const stage = assessment.stages.at(-1);
  const now = useNow();
  const measured = night && nightSentence(night, curve === undefined ? null : meanOutside(curve), now);
  const all = stage === undefined ? null : answerSentence(stageAnswer(stage, assessment.design));
  return (
    <>
      {measured === null ? null : (
        <p class="answer">
          {tied([measured, night && foretoldSentence(night)].filter((it) => it !== null).join(' '))}
        </p>
      )}
      {all === null ? null : <p class={measured === null ? 'answer' : 'answer-of-all'}>{tied(all)}</p>}
      <p class="small lesser">{lastReadingSentence(house.lastReading, now)}</p>
    </>
  );
}

export function MeasuredAndDrawn({ assessment }: { assessment: Assessment }) {
  const losses = withDesignRange(heatLossMarks(assessment), assessment.design);
  if (losses.length === 0) return null;
  return (
    <section>
      <h2>
        <Term of="heat loss">Heat loss</Term>, {kindsOf(losses)}
      </h2>
      <Rule title={`Heat loss, ${kindsOf(losses)}`} unit="W/K" marks={losses} />
      {losses.some(({ kind }) => kind === 'measured') ? <HowToRead /> : null}
    </section>
  );
}

/** The drawing is not sure of itself either; with its range there is no room on a phone for "vents shut" as well. */
const withDesignRange = (marks: readonly RuleMark[], design: Assessment['design']): readonly RuleMark[] => {
  const range = design && (design.ranges.heatLossAsTestedWK ?? design.ranges.heatLossWK);
  return marks.map((mark) =>
    mark.kind === 'drawn' && range !== null
      ? { ...mark, label: 'As drawn', low: range.low, high: range.high }
      : mark,
  );
};

export function HowSlowly({ assessment }: { assessment: Assessment }) {
  const last =
    assessment.stages.findLast(({ timeConstantH }) => timeConstantH !== null)?.timeConstantH ?? null;
  if (last === null) return null;
  return (
    <section>
      <h2>
        How slowly it cools: the <Term of="time constant" />
      </h2>
      <p>{tied(coolingSentence(last))}</p>
      <Rule title="Time constant" unit="h" marks={timeConstantMarks(assessment)} />
    </section>
  );
}

const HowToRead = () => (
  <p class="small lesser">
    In <Term of="W/K" />. The line is the <Term of="interval">95 % interval</Term>, the stroke on it the best
    single figure, which also stands in brackets.
  </p>
);

function kindsOf(marks: readonly RuleMark[]): string {
  const [measured, drawn] = (['measured', 'drawn'] as const).map((kind) =>
    marks.some((mark) => mark.kind === kind),
  );
  return measured && drawn ? 'measured and drawn' : measured ? 'measured' : 'as drawn';
}

export function Changes({ assessment }: { assessment: Assessment }) {
  if (assessment.comparisons.length === 0) return null;
  return (
    <section>
      <h2>What changed</h2>
      {assessment.comparisons.map((comparison) => (
        <p key={`${comparison.before} ${comparison.after}`}>
          {tied(
            [changeSentence(comparison), changeOfYearSentence(comparison)]
              .filter((it) => it !== null)
              .join(' '),
          )}
        </p>
      ))}
    </section>
  );
}

export function Messages({ title, messages }: { title: string; messages: readonly Message[] }) {
  if (messages.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ProblemList problems={messages} />
    </section>
  );
}
