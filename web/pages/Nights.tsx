/** Every night: the row, the one that is open, how fast all of them cool, and all of them as a table. */
import type { RefObject } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { useRoute } from 'preact-iso';
import type { NightsAnswer } from '../../server/api/shapes.ts';
import { lastNight, nightsSentence } from '../../src/words/answer.ts';
import { getNights } from '../api.ts';
import { NightRow } from '../charts/NightRow.tsx';
import { ByHandStatus } from '../nights/ByHandStatus.tsx';
import { Cooling } from '../nights/Cooling.tsx';
import { HandPicked } from '../nights/HandPicked.tsx';
import { LaterStarts } from '../nights/LaterStarts.tsx';
import { NightsByMonth } from '../nights/NightsByMonth.tsx';
import { handPickedSentence } from '../nights/nightWords.ts';
import { OneNight } from '../nights/OneNight.tsx';
import { type AssessedHouse, useByHand } from '../nights/useByHand.ts';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { useLoaded } from '../useLoaded.ts';
import './Nights.css';

export function Nights() {
  const { params, query } = useRoute();
  return (
    <HouseFrame id={params.id} here="Nights">
      {(house, assessment) => <AllNights first={{ house, assessment }} asked={query.night} />}
    </HouseFrame>
  );
}

interface AllNightsProps {
  readonly first: AssessedHouse;
  /** The date in the address. */
  readonly asked: string | undefined;
}

function AllNights({ first, asked }: AllNightsProps) {
  const byHand = useByHand(first);
  const { house, assessment } = byHand;
  const { loaded: answer, again } = useLoaded(
    (signal) => getNights(house.id, signal),
    `${house.id} ${house.lastReading}`,
  );
  // Assessed again: what is there stays until the new curves are.
  useEffect(() => {
    if (house !== first.house) again();
  }, [house, first, again]);
  const nights = assessment.stages.flatMap((stage) => stage.nights);
  const href = (date: string) => `/house/${house.id}/nights?night=${date}`;
  const open = asked ?? lastNight(assessment)?.date;
  const opened = useRef<HTMLDivElement>(null);
  const status = useRef<HTMLDivElement>(null);
  const leave = () => status.current?.focus();
  useBroughtIntoView(opened, asked);
  const wind = useMemo(() => windOf(answer.kind === 'loaded' ? answer.value : null), [answer]);
  if (answer.kind === 'failed') return <ProblemList problems={answer.problems} />;
  const curves = answer.kind === 'loaded' ? answer.value.curves : null;
  const curve = curves?.find(({ date }) => date === open);
  const handPicked = handPickedSentence(nights);
  return (
    <>
      {curves === null ? (
        <>
          <Skeleton lines={[0.5]} />
          <Skeleton height={265} />
          <Skeleton height={620} />
        </>
      ) : (
        <>
          <p>
            {nightsSentence(curves.length, nights)}
            {handPicked === null ? null : <strong> {handPicked}</strong>}
          </p>
          <NightRow
            curves={curves}
            nights={nights}
            href={href}
            {...(open === undefined ? {} : { selected: open })}
          />
          <ByHandStatus byHand={byHand} at={status} />
          <div ref={opened}>
            {curve === undefined ? (
              <p>There is no night of {open ?? 'any date'} in the record. Touch one in the row to open it.</p>
            ) : (
              <OneNight
                byHand={byHand}
                curve={curve}
                night={nights.find(({ date }) => date === open)}
                wind={wind === null ? undefined : (wind.get(curve.date) ?? null)}
                leave={leave}
              />
            )}
          </div>
        </>
      )}
      <Cooling stages={assessment.stages} href={href} selected={open} />
      {assessment.stages.map((stage) => (
        <LaterStarts key={stage.name} stage={stage} several={assessment.stages.length > 1} />
      ))}
      <HandPicked byHand={byHand} href={href} leave={leave} />
      <section>
        <h2>All nights</h2>
        {assessment.stages.map((stage) => (
          <NightsByMonth key={stage.name} stage={stage} href={href} wind={wind} open={open} />
        ))}
      </section>
    </>
  );
}

/** By the date of the night [m/s]; null where no wind was logged at all. */
function windOf(answer: NightsAnswer | null): ReadonlyMap<string, number | null> | null {
  if (answer?.wind === undefined) return null;
  return new Map(answer.wind.map(({ date, meanMS }) => [date, meanMS]));
}

/** A night chosen far down in the table opens above: the page goes to it, unless its head is to be seen. */
function useBroughtIntoView(opened: RefObject<HTMLDivElement | null>, asked: string | undefined): void {
  const before = useRef(asked);
  useEffect(() => {
    if (before.current === asked) return;
    before.current = asked;
    const top = opened.current?.getBoundingClientRect().top ?? 0;
    if (top < 0 || top > 0.75 * innerHeight) opened.current?.scrollIntoView();
  }, [asked, opened]);
}
