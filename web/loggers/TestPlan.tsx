/** One test, chosen among those that might decide it, laid on an evening's clock: what to do, switch off, take and mind. */
import { useState } from 'preact/hooks';
import type { HouseDetail } from '../../server/api/shapes.ts';
import { dayAndClock } from '../../src/sheet/drawing/clock.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { localDate } from '../../src/sky/zone.ts';
import { figures } from '../../src/words/index.ts';
import {
  bringAlong,
  cautionNames,
  chanceSentence,
  heatersSentence,
  noNight,
  nothingToDecide,
  shorterHeating,
  shortHeating,
  shortNight,
  switchOff,
  testCautions,
  testNames,
  testSteps,
  warmestSentence,
  whoStays,
} from '../../src/words/testPlan.ts';
import { Caution } from '../parts/Caution.tsx';
import { DateField } from '../parts/DateField.tsx';
import { FormField } from '../parts/FormField.tsx';
import { type FurtherTest, type PlannedTest, type Schedule, scheduleOf, USUAL_HEATING } from './schedule.ts';

/** For a house of which no test was foretold. */
const inAnyHouse: readonly PlannedTest[] = [
  { test: 'heated-night', moreNights: null, powerW: null, durationH: USUAL_HEATING, warmestC: null },
  { test: 'more-nights', moreNights: null, powerW: null, durationH: null, warmestC: null },
];
const LEAST_COOLING = 4; // [h]
const LEAST_HEATING = 3; // [h]
/** From noon on the plan is for tomorrow [s]: a test begins at noon. */
const HALF_A_DAY = 43_200;

export function TestPlan({ house: { house, assessment } }: { house: HouseDetail }) {
  const { location } = house;
  const [date, setDate] = useState(() => localDate(Date.now() / 1000 + HALF_A_DAY, location.timeZone));
  const [chosen, setChosen] = useState(0);
  const foretold = assessment?.stages.at(-1)?.furtherTests ?? [];
  const tests: readonly (PlannedTest & Partial<FurtherTest>)[] = foretold.length > 0 ? foretold : inAnyHouse;
  const planned = tests[Math.min(chosen, tests.length - 1)];
  const schedule = scheduleOf(planned, date, location);
  const heated = planned.test === 'heated-night' || planned.test === 'metered-week';
  return (
    <>
      <p class="answer">{tied(answerOf(planned))}</p>
      <p>
        {planned.chanceToDecide === undefined
          ? nothingToDecide
          : tied(chanceSentence(planned.chanceToDecide))}
      </p>
      <div class="plan-choices screen-only">
        <FormField label="Test">
          {(ties) => (
            <select
              {...ties}
              value={chosen}
              onChange={({ currentTarget: { value } }) => setChosen(Number(value))}
            >
              {tests.map(({ test, moreNights }, i) => (
                <option key={`${test} ${i}`} value={i}>
                  {moreNights === null ? testNames[test] : `${testNames[test]}: ${moreNights}`}
                </option>
              ))}
            </select>
          )}
        </FormField>
        <DateField
          label="On the day of"
          type="date"
          value={date}
          onWrite={(value) => value !== '' && setDate(value)}
        />
        <button type="button" onClick={() => print()}>
          Print this plan
        </button>
      </div>
      <section>
        <h2>
          {testNames[planned.test]}, {tied(figures.dayOfYear(date))}
        </h2>
        {planned.test === 'heated-night' ? <Heaters planned={planned} schedule={schedule} /> : null}
        <Hours schedule={schedule} timeZone={location.timeZone} />
      </section>
      {heated || planned.test === 'more-nights' ? (
        <Listed head="What is switched off" items={switchOff} />
      ) : null}
      {heated ? <Listed head="What to take along" items={bringAlong} /> : null}
      <section>
        <h2>Mind this</h2>
        <dl class="advice">
          {(Object.keys(testCautions) as (keyof typeof testCautions)[])
            .filter((it) => heated || it !== 'heaters')
            .map((it) => (
              <div key={it} class="caution">
                <dt>{cautionNames[it]}</dt>
                <dd>{testCautions[it]}</dd>
              </div>
            ))}
        </dl>
      </section>
    </>
  );
}

const answerOf = ({ test, text }: PlannedTest & Partial<FurtherTest>) =>
  text === undefined ? `${testNames[test]}.` : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function Heaters({ planned, schedule }: { planned: PlannedTest; schedule: Schedule }) {
  const { powerW, durationH, warmestC } = planned;
  const heating = schedule.kind === 'hours' ? schedule.heating : null;
  return (
    <>
      <p>{tied(heatersSentence(powerW, heating?.hours ?? durationH ?? USUAL_HEATING))}</p>
      <p>{whoStays}</p>
      {heating === null || heating.hours >= heating.wanted ? null : (
        <p>{tied(shorterHeating(heating.hours, heating.wanted))}</p>
      )}
      {warmestC === null ? null : <p>{tied(warmestSentence(warmestC))}</p>}
    </>
  );
}

function Hours({ schedule, timeZone }: { schedule: Schedule; timeZone: string }) {
  if (schedule.kind === 'no night') return <p>{noNight}</p>;
  if (schedule.kind === 'errand') return <p>{schedule.text}</p>;
  return (
    <>
      {schedule.heating !== null && schedule.heating.left < LEAST_COOLING ? (
        <Caution>{tied(shortNight(schedule.heating.left))}</Caution>
      ) : null}
      {schedule.heating !== null && schedule.heating.hours < LEAST_HEATING ? (
        <Caution>{tied(shortHeating(schedule.heating.hours))}</Caution>
      ) : null}
      <p class="small lesser">By the house’s clock.</p>
      <ol class="plan-hours">
        {schedule.steps.map(({ at, step }) => (
          <li key={`${step} ${at}`}>
            <strong class="figure">{tied(dayAndClock(at, timeZone))}</strong>
            <span>{testSteps[step].what}</span>
            <span class="plan-write">{testSteps[step].write}</span>
          </li>
        ))}
      </ol>
    </>
  );
}

const Listed = ({ head, items }: { head: string; items: readonly string[] }) => (
  <section>
    <h2>{head}</h2>
    <ul class="checks">
      {items.map((it) => (
        <li key={it}>{it}</li>
      ))}
    </ul>
  </section>
);
