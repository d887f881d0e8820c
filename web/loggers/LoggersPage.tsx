/** The loggers: where each sits, what it did and what is doubtful about it, where one belongs, and what to do next. */
import { useRoute } from 'preact-iso';
import type { LoggersAnswer } from '../../server/api/loggerShapes.ts';
import type { HouseDetail } from '../../server/api/shapes.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { isoWithOffset } from '../../src/sky/zone.ts';
import { figures } from '../../src/words/index.ts';
import { freshSentence, loggersCounted, nothingSensed } from '../../src/words/loggerFacts.ts';
import { coLocationAdvice, ladderCaution, placingAdvice } from '../../src/words/placingAdvice.ts';
import { getLoggers } from '../api.ts';
import { Caution } from '../parts/Caution.tsx';
import { LoadedHouse } from '../parts/HouseFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Section } from '../parts/Section.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { useLoaded } from '../useLoaded.ts';
import { CoLocation } from './CoLocation.tsx';
import { LoggerTable } from './LoggerTable.tsx';
import { type LoggerRow, loggerRows } from './loggerRows.ts';
import './loggers.css';

export function LoggersPage() {
  const { id } = useRoute().params;
  return (
    <LoadedHouse id={id} title="Loggers" here="Loggers">
      {(house, again) => <Loggers house={house} again={again} />}
    </LoadedHouse>
  );
}

interface LoggersProps {
  readonly house: HouseDetail;
  /** Loads the house anew. */
  readonly again: () => void;
}

function Loggers({ house, again }: LoggersProps) {
  const { loaded } = useLoaded((signal) => getLoggers(house.id, signal), `${house.id} ${house.lastReading}`);
  if (loaded.kind === 'loading') return <Skeleton height={900} />;
  if (loaded.kind === 'failed') return <ProblemList problems={loaded.problems} />;
  return <Shown house={house} again={again} answer={loaded.value} />;
}

function Shown({ house, again, answer }: LoggersProps & { readonly answer: LoggersAnswer }) {
  const { id, house: drawn, assessment } = house;
  const rows = loggerRows(drawn, answer, assessment);
  const design = assessment?.design ?? null;
  const doubtful = rows.filter(({ findings }) => findings.length > 0);
  return (
    <>
      <p class="answer">
        {tied([loggersCounted(drawn.loggers), newestSentence(answer, drawn.location.timeZone)].join(' '))}
      </p>
      {design === null ? null : (
        <section>
          <h2>Where they sit</h2>
          <Section
            elements={design.elements}
            designed={drawn.elements ?? []}
            loss={design.heatLossWK}
            loggers={drawn.loggers}
          />
        </section>
      )}
      <section>
        <h2>What each did</h2>
        <div class="logger-table">
          <LoggerTable rows={rows} timeZone={drawn.location.timeZone} />
        </div>
      </section>
      <section>
        <h2>What to look at</h2>
        {assessment === null ? <p>The house is not assessed yet; then doubts stand here.</p> : null}
        {assessment === null || rows.some(({ sensed }) => sensed) ? null : <p>{nothingSensed}</p>}
        {doubtful.map((row) => (
          <Doubts key={row.logger.file} {...row} />
        ))}
      </section>
      <section>
        <h2>Where a logger belongs</h2>
        <dl class="advice">
          {placingAdvice.map(({ head, text }) => (
            <div key={head}>
              <dt>{head}</dt>
              <dd>{tied(text)}</dd>
            </div>
          ))}
        </dl>
        <Caution>{ladderCaution}</Caution>
      </section>
      <section>
        <h2>Side by side first</h2>
        {coLocationAdvice.map((it) => (
          <p key={it}>{tied(it)}</p>
        ))}
        <CoLocation house={house} again={again} />
      </section>
      <section>
        <h2>The next test</h2>
        <p>
          <a href={`/house/${id}/test`}>The plan for the next test</a>: hour by hour with this house’s sunset,
          to print and take on site, and a place for what a plug meter read.
        </p>
      </section>
    </>
  );
}

const Doubts = ({ name, logger, findings }: LoggerRow) => (
  <div class="logger-doubts">
    <h3>{name}</h3>
    <p class="small lesser">{logger.file}</p>
    <ProblemList problems={findings} />
  </div>
);

function newestSentence({ asked, channels }: LoggersAnswer, timeZone: string): string {
  if (channels.length === 0) return 'Nothing of them could be read.';
  const newest = Math.max(...channels.map(({ last }) => last));
  const ago = freshSentence(asked - newest);
  return `The newest reading is of ${figures.moment(isoWithOffset(newest, timeZone))}${ago === null ? '' : `, ${ago}`}.`;
}
