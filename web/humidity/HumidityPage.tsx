/** Humidity beside temperature, wherever it was logged: what the air held, whether the house dries, and what that means. */
import { useRoute } from 'preact-iso';
import type { HumidityAnswer } from '../../server/api/loggerShapes.ts';
import type { HouseDetail, ReadingsAnswer } from '../../server/api/shapes.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import {
  airSentence,
  dryingAndHeat,
  dryingSentence,
  humidityMeanings,
  noHumidityOutside,
  ordinarySentence,
} from '../../src/words/aboutHumidity.ts';
import { getHumidity, getReadings } from '../api.ts';
import { LoadedHouse } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { useLoaded } from '../useLoaded.ts';
import { BeingRead } from './BeingRead.tsx';
import { HumidityChart, POINTS } from './HumidityChart.tsx';
import { MeansOfLoggers } from './MoistTables.tsx';
import { moistNights, roomsMean } from './moistNights.ts';
import { NoHumidity } from './NoHumidity.tsx';
import './humidity.css';

export function HumidityPage() {
  const { id } = useRoute().params;
  return (
    <LoadedHouse id={id} title="Humidity" here="Humidity">
      {(house) => <Humidity key={house.id} house={house} />}
    </LoadedHouse>
  );
}

/** Of the readings only nights and stages are wanted. */
const FEWEST_POINTS = 10;

function Humidity({ house: { id, house } }: { house: HouseDetail }) {
  const { loaded } = useLoaded(
    (signal) =>
      Promise.all([
        getHumidity(id, { points: POINTS }, signal),
        getReadings(id, { points: FEWEST_POINTS }, signal),
      ]),
    id,
  );
  if (loaded.kind === 'loading') return <BeingRead id={id} />;
  if (loaded.kind === 'failed')
    return loaded.problems.some(({ code }) => code === 'no-humidity') ? (
      <NoHumidity />
    ) : (
      <ProblemList problems={loaded.problems} />
    );
  const [whole, record] = loaded.value;
  return <Shown id={id} timeZone={house.location.timeZone} whole={whole} record={record} />;
}

interface ShownProps {
  readonly id: string;
  readonly timeZone: string;
  readonly whole: HumidityAnswer;
  readonly record: ReadingsAnswer;
}

function Shown({ id, timeZone, whole, record }: ShownProps) {
  const rooms = roomsMean(whole.loggers);
  const nights = moistNights(whole.loggers, whole.outside);
  const told = [dryingSentence(nights), ordinarySentence(nights)].filter((it) => it !== null);
  return (
    <>
      <p class="answer">
        {rooms === null ? 'Humidity was logged, but in none of the rooms.' : tied(airSentence(rooms))}
      </p>
      {whole.outside === null ? <p>{noHumidityOutside}</p> : null}
      {told.map((it) => (
        <p key={it}>{tied(it)}</p>
      ))}
      <section>
        <h2>Over the whole record</h2>
        <MeansOfLoggers loggers={whole.loggers} />
      </section>
      <HumidityChart id={id} timeZone={timeZone} whole={whole} record={record} />
      <section>
        <h2>What these figures mean</h2>
        <dl class="meanings">
          {humidityMeanings.map(({ term, text }) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <p>{tied(dryingAndHeat)}</p>
      </section>
    </>
  );
}
