/** All houses as a list in a letter: name, verdict in a sentence, measured and drawn on one small ruler. */

import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { HouseSummary } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { answerSentence, lastReadingSentence } from '../../src/words/answer.ts';
import { KeptTooLong } from '../access/KeptTooLong.tsx';
import { SignOut } from '../access/SignOut.tsx';
import { getHouses, problemsOf, putAway } from '../api.ts';
import { useNow } from '../house/useNow.ts';
import { Watched } from '../house/Watched.tsx';
import { type Act, PutAway } from '../houses/PutAway.tsx';
import { SideBySide } from '../houses/SideBySide.tsx';
import { meet } from '../parts/metHouses.ts';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { useLoaded } from '../useLoaded.ts';
import './Houses.css';
import { answerMarks } from '../../src/sheet/drawing/rules.ts';
import { handOn } from './handedOn.ts';
import type { PathOf } from './houseFolder.ts';
import { PackBrought } from './PackBrought.tsx';
import { packIn } from './packIn.ts';
import { useDrop } from './useDrop.ts';
import { usePack } from './usePack.ts';

/** While something is under way, the list is asked for again after this [ms]. */
const ASK_AGAIN = 1000;

export function Houses() {
  const { loaded, again } = useLoaded(getHouses, 'houses');
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const [told, setTold] = useState('');
  const telling = useRef<HTMLParagraphElement>(null);
  /** What was pressed goes with its house: the focus comes to what has become of it. */
  const act: Act = (done, words) =>
    done.then(
      () => {
        setProblems([]);
        setTold(words);
        telling.current?.focus();
        again();
      },
      (thrown) => setProblems(problemsOf(thrown)),
    );
  const { route } = useLocation();
  const pack = usePack(again);
  const take = async (found: readonly PathOf<File>[]) => {
    const file = await packIn(found);
    if (file !== null) return pack.bring(file);
    handOn(found);
    route('/bring');
  };
  const over = useDrop({ send: take, complain: (problem) => setProblems([problem]) });
  const houses = loaded.kind === 'loaded' ? loaded.value.houses : [];
  houses.forEach(meet);
  const shown = houses.filter(({ away }) => !away);
  const now = useNow();
  const coming = loaded.kind === 'loaded' && loaded.value.demonstrationComing;
  const underWay = coming || houses.some(({ state }) => state.kind === 'assessing');
  useEffect(() => {
    if (!underWay) return;
    const soon = setTimeout(again, ASK_AGAIN);
    return () => clearTimeout(soon);
  }, [loaded, underWay, again]);
  return (
    <PageFrame title="Houses" here="Houses">
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} /> : null}
      <ProblemList problems={problems} urgent />
      <p class="bring-link">
        <a href="/bring">Bring a house</a>
        <span class="small lesser">
          {over
            ? 'Let go: the files are read here.'
            : 'or drop its loggers’ files, or a handover pack, anywhere on this page.'}
        </span>
      </p>
      <PackBrought state={pack.state} />
      <p role="status" class="small" ref={telling} tabIndex={-1}>
        {told}
      </p>
      {loaded.kind === 'loading' ? <Waiting /> : null}
      <SideBySide houses={shown} />
      <ul class="houses">
        {shown.map((house) => (
          <HouseLine
            key={house.id}
            house={house}
            now={now}
            onPutAway={() =>
              act(
                putAway(house.id, true),
                `“${house.name}” is put away. It can be brought back at the foot of this page.`,
              )
            }
          />
        ))}
      </ul>
      {loaded.kind === 'loaded' ? (
        <>
          {coming ? (
            <p role="status">The demonstration house is being made ready; it will stand here shortly.</p>
          ) : shown.length === 0 ? (
            <p>No house is here yet.</p>
          ) : null}
          <PutAway houses={houses} coming={coming} act={act} />
        </>
      ) : null}
      <Watched house={null} />
      <SignOut />
    </PageFrame>
  );
}

/** As high as what comes, so that nothing jumps: the letter's shape of some houses. */
const Waiting = () => (
  <>
    <p class="spoken" role="status">
      Loading
    </p>
    <ul class="houses" aria-hidden="true">
      {[0, 1, 2].map((i) => (
        <li key={i} class="house">
          <Skeleton lines={[0.4, 0.8, 0.6]} />
          <Skeleton height={150} />
        </li>
      ))}
    </ul>
  </>
);

interface HouseLineProps {
  readonly house: HouseSummary;
  readonly now: number | null;
  readonly onPutAway: () => void;
}

function HouseLine({ house, now, onPutAway }: HouseLineProps) {
  const { id, name, invented, answer, state, lastReading, keepUntil } = house;
  return (
    <li class="house">
      <h2>
        <a href={`/house/${id}`}>{name}</a>
      </h2>
      <p>{answer === null ? waiting(state) : tied(answerSentence(answer))}</p>
      {answer === null ? null : (
        <Rule title={`${name}: heat loss`} unit="W/K" marks={answerMarks(answer)} small />
      )}
      <p class="small lesser house-foot">
        <span>{lastReadingSentence(lastReading, now)}</span>
        <KeptTooLong until={keepUntil} />
        {invented ? <span>Invented, to show what comes of real readings.</span> : null}
        <button type="button" class="quiet" onClick={onPutAway} aria-label={`Put it away: ${name}`}>
          Put it away
        </button>
      </p>
    </li>
  );
}

function waiting(state: HouseSummary['state']): string {
  switch (state.kind) {
    case 'assessed':
      return 'Nothing could be told from its readings.';
    case 'assessing':
      return `Being assessed. ${state.what}`;
    case 'not assessed':
      return 'It could not be assessed; its page says why.';
    case 'cancelled':
      return 'Its assessment was stopped.';
  }
}
