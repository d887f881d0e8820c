/** One house, the answer first: a sentence, the ruler that shows it, the nights, what to do next, what changed. */
import { useRoute } from 'preact-iso';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Assessment, Message, NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import {
  answerSentence,
  changeSentence,
  coolingSentence,
  lastNight,
  lastReadingSentence,
  nightSentence,
  stageAnswer,
  widthSentence,
} from '../../src/words/answer.ts';
import { figures, heaterCautions } from '../../src/words/index.ts';
import { getNights } from '../api.ts';
import { NightChart } from '../charts/NightChart.tsx';
import { NightRow } from '../charts/NightRow.tsx';
import { Caution } from '../parts/Caution.tsx';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { Term } from '../parts/Term.tsx';
import { tied } from '../parts/tied.ts';
import { useLoaded } from '../useLoaded.ts';
import { meanOutside } from './meanOutside.ts';
import { NightTable } from './NightTable.tsx';
import { heatLossMarks, timeConstantMarks } from './rules.ts';
import { TakeWithYou } from './TakeWithYou.tsx';

export function HousePage() {
  const { id } = useRoute().params;
  return (
    <HouseFrame
      id={id}
      here="The answer"
      foot={(house, again) => <TakeWithYou house={house} again={again} />}
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
  const said = night && nightSentence(night, curve === undefined ? null : meanOutside(curve));
  const stage = assessment.stages.at(-1);
  return (
    <>
      <p class="answer">
        {tied(
          [said, stage === undefined ? null : answerSentence(stageAnswer(stage, assessment.design))]
            .filter(Boolean)
            .join(' '),
        )}
      </p>
      <p class="small lesser">{lastReadingSentence(house.lastReading)}</p>

      <HeatLoss assessment={assessment} />

      <section>
        <h2>Nights</h2>
        <p>
          Each dark band is a night, the newest at the right: inside falls, outdoors lies beneath.
          <span class="screen-only"> Touch one to open it.</span>
        </p>
        {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} /> : null}
        {curves === null ? (
          <Skeleton height={230} />
        ) : (
          <NightRow
            curves={curves}
            nights={assessment.stages.flatMap(({ nights }) => nights)}
            href={(date) => `/house/${house.id}/nights?night=${date}`}
          />
        )}
      </section>

      {night !== null && curve !== undefined ? (
        <LastNight night={night} curve={curve} timeZone={house.house.location.timeZone} />
      ) : null}

      <Next messages={stage?.next ?? []} />
      <Changes assessment={assessment} />
      <Check warnings={assessment.warnings} />
    </>
  );
}

function HeatLoss({ assessment }: { assessment: Assessment }) {
  const cooling = timeConstantMarks(assessment);
  const losses = heatLossMarks(assessment);
  const shown = assessment.stages.findLast(({ heatLossWK }) => heatLossWK !== null);
  const width = shown === undefined ? null : widthSentence(shown, assessment.stages.length > 1);
  const last =
    assessment.stages.findLast(({ timeConstantH }) => timeConstantH !== null)?.timeConstantH ?? null;
  return (
    <>
      {losses.length === 0 ? null : (
        <section>
          <h2>
            <Term of="heat loss">Heat loss</Term>, {kindsOf(losses)}
          </h2>
          <Rule title={`Heat loss, ${kindsOf(losses)}`} unit="W/K" marks={losses} />
          {losses.some(({ kind }) => kind === 'measured') ? <HowToRead /> : null}
          {width === null ? null : <p class="small lesser">{tied(width)}</p>}
        </section>
      )}
      {last === null ? null : (
        <section>
          <h2>
            How slowly it cools: the <Term of="time constant" />
          </h2>
          <p>{tied(coolingSentence(last))}</p>
          <Rule title="Time constant" unit="h" marks={cooling} />
          {losses.some(({ kind }) => kind === 'measured') ? null : <HowToRead />}
        </section>
      )}
    </>
  );
}

const HowToRead = () => (
  <p class="small lesser">
    The line is the <Term of="interval">95 % interval</Term>, the stroke on it the best single figure.
  </p>
);

function kindsOf(marks: readonly RuleMark[]): string {
  const [measured, drawn] = (['measured', 'drawn'] as const).map((kind) =>
    marks.some((mark) => mark.kind === kind),
  );
  return measured && drawn ? 'measured and drawn' : measured ? 'measured' : 'as drawn';
}

const LastNight = ({
  night,
  curve,
  timeZone,
}: {
  night: NightResult;
  curve: NightCurve;
  timeZone: string;
}) => (
  <ChartFrame
    title={`The night of ${figures.day(night.date)}`}
    summary="The broken line is the smooth fall that was fitted to the readings; the figures below tell what it leaves over."
    table={() => <NightTable curve={curve} timeZone={timeZone} />}
  >
    <NightChart curve={curve} night={night} timeZone={timeZone} />
  </ChartFrame>
);

function Next({ messages }: { messages: readonly Message[] }) {
  if (messages.length === 0) return null;
  return (
    <section>
      <h2>What to do next</h2>
      {messages.map(({ code, text, remedy }) => (
        <div key={code}>
          <p>{text}</p>
          {remedy === undefined ? null : remedy === heaterCautions ? (
            <Caution>{remedy}</Caution>
          ) : (
            <p>{remedy}</p>
          )}
        </div>
      ))}
    </section>
  );
}

function Changes({ assessment }: { assessment: Assessment }) {
  if (assessment.comparisons.length === 0) return null;
  return (
    <section>
      <h2>What changed</h2>
      {assessment.comparisons.map((comparison) => (
        <p key={`${comparison.before} ${comparison.after}`}>{tied(changeSentence(comparison))}</p>
      ))}
    </section>
  );
}

function Check({ warnings }: { warnings: readonly Message[] }) {
  if (warnings.length === 0) return null;
  return (
    <section>
      <h2>Please check</h2>
      <ProblemList problems={warnings} />
    </section>
  );
}
