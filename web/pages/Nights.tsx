/** Every night: the row, the one that is open with its fit and its reasons, and all of them as a table. */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useRoute } from 'preact-iso';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Assessment, NightResult, StageResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { lastNight, nightSentence, nightsSentence } from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';
import { getNights } from '../api.ts';
import { spokenNight } from '../charts/chartWords.ts';
import { NightChart } from '../charts/NightChart.tsx';
import { NightRow } from '../charts/NightRow.tsx';
import { nightColumns, rmsOf } from '../charts/nightSeries.ts';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { useLoaded } from '../useLoaded.ts';
import { meanOutside } from './meanOutside.ts';
import { NightTable } from './NightTable.tsx';
import './Nights.css';

export function Nights() {
  const { params, query } = useRoute();
  return (
    <HouseFrame id={params.id} here="Nights">
      {(house, assessment) => <AllNights house={house} assessment={assessment} asked={query.night} />}
    </HouseFrame>
  );
}

interface AllNightsProps {
  readonly house: HouseDetail;
  readonly assessment: Assessment;
  /** The date in the address. */
  readonly asked: string | undefined;
}

function AllNights({ house, assessment, asked }: AllNightsProps) {
  const { loaded } = useLoaded((signal) => getNights(house.id, signal), `${house.id} ${house.lastReading}`);
  const nights = assessment.stages.flatMap((stage) => stage.nights);
  const href = (date: string) => `/house/${house.id}/nights?night=${date}`;
  const open = asked ?? lastNight(assessment)?.date;
  const opened = useRef<HTMLDivElement>(null);
  useBroughtIntoView(opened, asked);
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  const curves = loaded.kind === 'loaded' ? loaded.value.curves : null;
  const curve = curves?.find(({ date }) => date === open);
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
          <p>{nightsSentence(curves.length, nights)}</p>
          <NightRow
            curves={curves}
            nights={nights}
            href={href}
            {...(open === undefined ? {} : { selected: open })}
          />
          <div ref={opened}>
            {curve === undefined ? (
              <p>There is no night of {open ?? 'any date'} in the record. Touch one in the row to open it.</p>
            ) : (
              <OneNight
                curve={curve}
                night={nights.find(({ date }) => date === open)}
                timeZone={house.house.location.timeZone}
              />
            )}
          </div>
        </>
      )}
      <section>
        <h2>All nights</h2>
        {assessment.stages.map((stage) => (
          <StageNights key={stage.name} stage={stage} href={href} />
        ))}
      </section>
    </>
  );
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

interface OneNightProps {
  readonly curve: NightCurve;
  readonly night: NightResult | undefined;
  readonly timeZone: string;
}

function OneNight({ curve, night, timeZone }: OneNightProps) {
  const measured = night === undefined ? null : nightSentence(night, meanOutside(curve));
  return (
    <ChartFrame
      title={`The night of ${figures.day(curve.date)}`}
      summary={measured ?? `${spokenNight(curve.date, night)}.`}
      table={() => <NightTable curve={curve} timeZone={timeZone} />}
    >
      {night === undefined ? null : <NightFigures curve={curve} night={night} />}
      {night !== undefined && night.reasons.length > 0 ? (
        <>
          <p>{night.used ? 'Used; to be known of it:' : 'Left out of the time constant:'}</p>
          <ProblemList problems={night.reasons} />
        </>
      ) : null}
      <NightChart curve={curve} night={night} timeZone={timeZone} />
    </ChartFrame>
  );
}

function NightFigures({ curve, night }: { readonly curve: NightCurve; readonly night: NightResult }) {
  const rms = rmsOf(nightColumns(curve).residual);
  const of = <T,>(value: T | null, write: (it: T) => string) =>
    value === null ? 'not measured' : write(value);
  return (
    <dl class="night-figures figure">
      <div>
        <dt>Rate</dt>
        <dd>{of(night.rateKPerH, figures.rate)}</dd>
      </div>
      <div>
        <dt>Warmer than outside, on average</dt>
        <dd>{of(night.meanDifferenceK, figures.kelvins)}</dd>
      </div>
      <div>
        <dt>
          <Term of="time constant">Time constant</Term>, this night alone
        </dt>
        <dd>{timeConstantOf(night) || 'not measured'}</dd>
      </div>
      <div>
        <dt>Off the fitted curve, typically</dt>
        <dd>{of(rms, (it) => `${figures.decimal(it, 2)} K`)}</dd>
      </div>
    </dl>
  );
}

/** With its standard error: "115 ± 12 h". */
function timeConstantOf({ timeConstantH, timeConstantSeH }: NightResult): string {
  if (timeConstantH === null) return '';
  if (timeConstantSeH === null) return figures.hours(timeConstantH);
  const digits = timeConstantSeH < 2 ? 1 : 0;
  return `${figures.decimal(timeConstantH, digits)} ± ${figures.decimal(timeConstantSeH, digits)} h`;
}

interface StageNightsProps {
  readonly stage: StageResult;
  readonly href: (date: string) => string;
}

function StageNights({ stage, href }: StageNightsProps) {
  if (stage.nights.length === 0) return null;
  const known = <T,>(value: T | null, write: (it: T) => string) => (value === null ? '' : write(value));
  return (
    <>
      <h3>{stage.name}</h3>
      <Table<NightResult>
        caption={`The nights of “${stage.name}”; the time constants are of single nights, with their standard errors`}
        rows={stage.nights}
        keyOf={({ date }) => date}
        columns={[
          {
            head: 'Night of',
            cell: ({ date }) => (
              <a class="night-day" href={href(date)}>
                {figures.day(date)}
              </a>
            ),
          },
          { head: 'Drop', cell: ({ dropK }) => known(dropK, figures.kelvins), numeric: true },
          { head: 'Rate', cell: ({ rateKPerH }) => known(rateKPerH, figures.rate), numeric: true },
          {
            head: 'Mean difference',
            cell: ({ meanDifferenceK }) => known(meanDifferenceK, figures.kelvins),
            numeric: true,
          },
          { head: 'Time constant', cell: timeConstantOf, numeric: true },
          { head: 'Used', cell: (night) => <span class="night-fate">{fateOf(night)}</span> },
        ]}
      />
    </>
  );
}

/** "used", or why not; a heater that was on is among the reasons. */
function fateOf({ used, reasons }: NightResult): string {
  const why = reasons.map(({ text }) => text).join('; ');
  if (used) return why === '' ? 'used' : `used (${why})`;
  return why === '' ? 'left out' : `left out: ${why}`;
}
