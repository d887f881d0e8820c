/** The mean U-value of the shell beside the drawing's, the ventilation taken out. */
import type { StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Term } from '../parts/Term.tsx';
import { meanUValueMarks, type TheDesign } from './gapMarks.ts';
import { noted } from './noted.ts';

interface MeanUValueProps {
  readonly stage: StageResult;
  readonly design: TheDesign;
}

/** Its note has the same figures in words. */
export function MeanUValue({ stage: { gap }, design }: MeanUValueProps) {
  const notes = noted(gap?.notes, 'mean-transmittance', 'mean-without-ventilation');
  if (notes.length === 0) return null;
  return (
    <section>
      <h2>
        The <Term of="mean U-value" />
      </h2>
      {gap?.meanUValue ? (
        <Rule
          title="Mean U-value of the shell"
          unit="U-value"
          marks={meanUValueMarks(gap.meanUValue, design)}
        />
      ) : (
        <p>As drawn it is {figures.transmittance(design.meanUValue)}.</p>
      )}
      <ProblemList problems={notes} />
    </section>
  );
}
