/** What a link shows of its house: the answer, the nights, the readings; no settings, and no way to other houses. */

import { useEffect, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { SharedHouse } from '../../server/api/accessShapes.ts';
import type { Work } from '../../server/api/shapes.ts';
import type { Assessment } from '../../src/assessment.ts';
import { lastNight } from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';
import { AllNights } from '../house/AllNights.tsx';
import { LastNight } from '../house/LastNight.tsx';
import { Answer, Changes, HowSlowly, MeasuredAndDrawn, Messages } from '../pages/House.tsx';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { ProgressLine } from '../parts/ProgressLine.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { useLoaded } from '../useLoaded.ts';
import { AddReadings } from './AddReadings.tsx';
import { FIRST_PAGE, followShared, getShared, getSharedNights } from './accessApi.ts';
import { SharedReadings } from './SharedReadings.tsx';
import { ENDED, sharedConsent } from './words.ts';
import './access.css';

export function Shared() {
  const { query } = useLocation();
  const { loaded, again } = useLoaded(getShared, 'shared');
  if (query.ended !== undefined)
    return (
      <PageFrame title="Nothing is shown here" alone>
        <ProblemList problems={[ENDED]} />
      </PageFrame>
    );
  if (loaded.kind === 'failed')
    return (
      <PageFrame title="Nothing is shown here" alone>
        <ProblemList problems={loaded.problems} />
      </PageFrame>
    );
  if (loaded.kind === 'loading')
    return (
      <PageFrame title=" " alone>
        <Skeleton lines={[0.8, 0.9, 0.5]} />
        <Skeleton height={220} />
      </PageFrame>
    );
  const house = loaded.value;
  return (
    <PageFrame title={house.name} alone>
      {house.invented ? (
        <p class="small lesser">Its readings are invented, to show what comes of real ones.</p>
      ) : null}
      <Underway house={house} changed={again} />
      {house.assessment === null ? null : <Results house={house} assessment={house.assessment} />}
      {house.mayAdd ? <AddReadings kept={again} /> : null}
      <section>
        <h2>Who may see this</h2>
        <p>{sharedConsent(figures.dayOfYear(new Date(house.until * 1000).toISOString()))}</p>
      </section>
    </PageFrame>
  );
}

/** Nothing once it is assessed. */
function Underway({ house: { state }, changed }: { house: SharedHouse; changed: () => void }) {
  const [work, setWork] = useState<Work | null>(null);
  const following = state.kind === 'assessing';
  useEffect(() => {
    if (!following) return;
    return followShared((progress) => {
      if (progress.state.kind === 'assessing') setWork(progress.state);
      else changed();
    });
  }, [following, changed]);
  if (state.kind === 'assessing') return <ProgressLine {...(work ?? state)} />;
  if (state.kind === 'assessed') return null;
  return (
    <p class="answer">
      There is no answer yet. Whoever sent you the link sees why, and can have it worked out.
    </p>
  );
}

function Results({ house, assessment }: { house: SharedHouse; assessment: Assessment }) {
  const { query } = useLocation();
  const { loaded } = useLoaded(getSharedNights, `shared nights ${house.lastReading}`);
  const curves = loaded.kind === 'loaded' ? loaded.value.curves : null;
  const nights = assessment.stages.flatMap((stage) => stage.nights);
  const night = nights.find(({ date }) => date === query.night) ?? lastNight(assessment);
  const curve = curves?.find(({ date }) => date === night?.date);
  const last = lastNight(assessment);
  return (
    <>
      <Answer
        house={house}
        assessment={assessment}
        night={last}
        curve={curves?.find(({ date }) => date === last?.date)}
      />
      <MeasuredAndDrawn assessment={assessment} />
      {curves === null && loaded.kind !== 'failed' ? <Skeleton height={420} /> : null}
      {night === null || curve === undefined ? null : night.from === null ? (
        <section>
          <h2>The night of {figures.day(night.date)}</h2>
          <ProblemList problems={night.reasons} />
        </section>
      ) : (
        <LastNight night={night} curve={curve} timeZone={house.timeZone} />
      )}
      <AllNights
        loaded={loaded}
        nights={nights}
        touch="Touch one to see it above."
        href={(date) => `/shared?night=${date}`}
        {...(night === null ? {} : { selected: night.date })}
      />
      <Changes assessment={assessment} />
      <HowSlowly assessment={assessment} />
      <SharedReadings timeZone={house.timeZone} of={house.lastReading} />
      <Messages title="To be borne in mind" messages={assessment.stages.at(-1)?.notes ?? []} />
      {house.state.kind === 'assessed' ? (
        <p class="screen-only">
          <a href={FIRST_PAGE} target="_blank" rel="noopener">
            The same on one page, to print
          </a>
        </p>
      ) : null}
    </>
  );
}
