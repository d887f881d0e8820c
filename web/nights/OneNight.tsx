/** The night that is open: what it says, its figures, why it was left out, its curve, and the person's own decision. */
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { spokenNight } from '../../src/sheet/drawing/chartWords.ts';
import { meanOutside } from '../../src/sheet/drawing/meanOutside.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { againstDrawnSentence, foretoldSentence, nightSentence } from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';
import { NightChart } from '../charts/NightChart.tsx';
import { nightColumns, rmsOf } from '../charts/nightSeries.ts';
import { NightTable } from '../pages/NightTable.tsx';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Term } from '../parts/Term.tsx';
import { DecideNight } from './DecideNight.tsx';
import { drawnBand, timeConstantOf, windSpeed } from './nightWords.ts';
import type { ByHand } from './useByHand.ts';

export interface OneNightProps {
  readonly byHand: ByHand;
  readonly curve: NightCurve;
  readonly night: NightResult | undefined;
  /** Its mean wind [m/s]; null where it is not known, undefined where none was logged at all. */
  readonly wind: number | null | undefined;
  readonly leave: () => void;
}

export function OneNight({ byHand, curve, night, wind, leave }: OneNightProps) {
  const { timeZone } = byHand.house.house.location;
  const measured = night === undefined ? null : nightSentence(night, meanOutside(curve));
  return (
    <ChartFrame
      title={`The night of ${figures.day(curve.date)}`}
      summary={
        measured === null || night === undefined
          ? `${spokenNight(curve.date, night)}.`
          : tied(
              [measured, foretoldSentence(night), againstDrawnSentence(night)]
                .filter((it) => it !== null)
                .join(' '),
            )
      }
      table={() => <NightTable curve={curve} timeZone={timeZone} />}
    >
      {night === undefined ? null : <NightFigures curve={curve} night={night} wind={wind} />}
      {night !== undefined && night.reasons.length > 0 ? (
        <>
          <p>{night.used ? 'Used; to be known of it:' : 'Left out of the time constant:'}</p>
          <ProblemList problems={night.reasons} />
        </>
      ) : null}
      {night === undefined ? null : <DecideNight byHand={byHand} curve={curve} night={night} leave={leave} />}
      <NightChart curve={curve} night={night} timeZone={timeZone} />
      {curve.foretold === undefined ? null : <p class="small lesser">{drawnBand}</p>}
    </ChartFrame>
  );
}

function NightFigures({
  curve,
  night,
  wind,
}: Pick<OneNightProps, 'curve' | 'wind'> & { night: NightResult }) {
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
      {wind === undefined ? null : (
        <div>
          <dt>Wind</dt>
          <dd>{of(wind, windSpeed)}</dd>
        </div>
      )}
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
