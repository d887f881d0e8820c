/** What is still open, and what would settle it: what the program advises next, the likeliest test first. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { widthSentence } from '../../src/words/answer.ts';
import { figures, heaterCautions } from '../../src/words/index.ts';
import { Caution } from '../parts/Caution.tsx';

interface UndecidedProps {
  readonly house: string;
  readonly stage: StageResult;
}

/** These have the likeliest test in their words. */
const WITH_TEST = ['next-best-test', 'next-stays-open'];

export function Undecided({ house, stage }: UndecidedProps) {
  const { gap, next, furtherTests = [] } = stage;
  const width = widthSentence(stage);
  const open = gap?.verdict === 'undecided';
  const test = next.some(({ code }) => WITH_TEST.includes(code)) ? undefined : furtherTests[0];
  if (next.length === 0 && test === undefined) return null;
  return (
    <section>
      <h2>{open ? 'Still undecided, and what would decide it' : 'What to do next'}</h2>
      {open && gap !== null ? (
        <p>
          {tied(
            `What it loses is ${timesDrawn(gap.ratio)} what was drawn: both sides of the line are possible.`,
          )}
        </p>
      ) : null}
      {next.map(({ code, text, remedy }) => (
        <div key={code}>
          <p>{tied(text)}</p>
          {remedy === undefined ? null : remedy === heaterCautions ? (
            <Caution>{remedy}</Caution>
          ) : (
            <p>{remedy}</p>
          )}
        </div>
      ))}
      {test === undefined ? null : (
        <p>
          {tied(
            `Most likely to decide it: ${test.text}; the chance is ${figures.percent(test.chanceToDecide)}.`,
          )}
        </p>
      )}
      {width === null ? null : <p class="small lesser">{tied(width)}</p>}
      {furtherTests.length > 1 ? (
        <p class="small screen-only">
          <a href={`/house/${house}/gap`}>All {furtherTests.length} tests, and what each would leave</a>
        </p>
      ) : null}
    </section>
  );
}

const timesDrawn = ({ low, high }: { low: number; high: number }) =>
  `${figures.ratio(low)} to ${figures.ratio(high)} times`;
