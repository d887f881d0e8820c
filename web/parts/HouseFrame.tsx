/** The frame of every page of a house: loads it, follows its assessment, and says in place when there is none. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { HouseDetail, HouseState } from '../../server/api/shapes.ts';
import type { Assessment } from '../../src/assessment.ts';
import { assessAgain, followAssessment, getHouse, problemsOf, stopAssessing } from '../api.ts';
import { useLoaded } from '../useLoaded.ts';
import { meet, metHouse } from './metHouses.ts';
import { type HousePageName, PageFrame } from './PageFrame.tsx';
import { ProblemList } from './ProblemList.tsx';
import { ProgressLine } from './ProgressLine.tsx';
import { Skeleton } from './Skeleton.tsx';

export interface HouseFrameProps {
  readonly id: string;
  /** Of a page that is none of those in the list; else the name of `here`. */
  readonly title?: string;
  readonly here: HousePageName;
  readonly children: (house: HouseDetail, assessment: Assessment) => ComponentChildren;
  /** What stands below also where there is no assessment; `again` loads the house anew. */
  readonly foot?: (house: HouseDetail, again: () => void) => ComponentChildren;
}

export function HouseFrame({ id, here, title = here, children, foot }: HouseFrameProps) {
  return (
    <LoadedHouse id={id} title={title} here={here}>
      {(house, again) => (
        <>
          <Assessing house={house} changed={again} />
          {house.assessment === null ? null : children(house, house.assessment)}
          {foot?.(house, again)}
        </>
      )}
    </LoadedHouse>
  );
}

interface LoadedHouseProps {
  readonly id: string;
  readonly title: string;
  readonly here: HousePageName;
  /** `again` loads the house anew. */
  readonly children: (house: HouseDetail, again: () => void) => ComponentChildren;
}

/** A page of a house whether or not it is assessed. */
export function LoadedHouse({ id, title, here, children }: LoadedHouseProps) {
  const { loaded, again } = useLoaded((signal) => getHouse(id, signal), id);
  if (loaded.kind === 'loaded') meet(loaded.value);
  if (loaded.kind === 'failed')
    return (
      <PageFrame title="This house cannot be shown">
        <ProblemList problems={loaded.problems} />
      </PageFrame>
    );
  if (loaded.kind === 'loading')
    return (
      <PageFrame title={title} house={metHouse(id)} here={here}>
        <Skeleton lines={[0.8, 0.9, 0.5]} />
        <Skeleton height={220} />
      </PageFrame>
    );
  const house = loaded.value;
  return (
    <PageFrame title={title} house={house} here={here}>
      {children(house, again)}
    </PageFrame>
  );
}

/** Nothing once the house is assessed; else how far it is, or why it is not, and what can be done. */
function Assessing({ house: { id, state: first }, changed }: { house: HouseDetail; changed: () => void }) {
  const [state, setState] = useState<HouseState>(first);
  const [problems, setProblems] = useState<ReturnType<typeof problemsOf>>([]);
  useEffect(() => setState(first), [first]);
  const following = state.kind === 'assessing';
  useEffect(() => {
    if (!following) return;
    return followAssessment(id, (progress) => {
      setState(progress.state);
      if (progress.state.kind !== 'assessing') changed();
    });
  }, [id, following, changed]);

  const ask = (question: (id: string) => ReturnType<typeof assessAgain>) =>
    question(id).then(
      (progress) => {
        setProblems([]);
        setState(progress.state);
      },
      (thrown) => setProblems(problemsOf(thrown)),
    );

  return (
    <>
      <ProblemList problems={problems} urgent />
      {state.kind === 'assessing' ? (
        <ProgressLine what={state.what} done={state.done} onCancel={() => ask(stopAssessing)} />
      ) : null}
      {state.kind === 'not assessed' || state.kind === 'cancelled' ? (
        <>
          <p class="answer">There is no answer yet.</p>
          {state.kind === 'cancelled' ? (
            <p>The assessment was stopped before its end. The readings are kept as they were brought.</p>
          ) : (
            <ProblemList problems={state.problems} />
          )}
          <button type="button" onClick={() => ask(assessAgain)}>
            {state.kind === 'cancelled' ? 'Assess it' : 'Assess it again'}
          </button>
        </>
      ) : null}
    </>
  );
}
