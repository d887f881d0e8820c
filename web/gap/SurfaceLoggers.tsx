/** What loggers on surfaces tell of the elements under them: a spot each, never the whole element. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Term } from '../parts/Term.tsx';
import { surfaceMarks } from './gapMarks.ts';

type Surface = NonNullable<StageResult['surfaces']>[number];

export function SurfaceLoggers({ stage: { surfaces = [] } }: { readonly stage: StageResult }) {
  if (surfaces.length === 0) return null;
  return (
    <section>
      <h2>
        What each <Term of="surface logger" /> tells
      </h2>
      <div class="gap-elements">
        {surfaces.map((surface) => (
          <OneSurface key={surface.logger} surface={surface} />
        ))}
      </div>
    </section>
  );
}

/** The paragraph has the ruler's figures in words. */
function OneSurface({ surface }: { readonly surface: Surface }) {
  const { logger, room, element, uValueWM2K: local, accepted, designUValue, notes } = surface;
  const told =
    local === null
      ? 'No U-value can be read.'
      : `${figures.transmittanceBetween(local)}${accepted ? '' : ', not by all rules of the average method'}.`;
  const drawn = designUValue === null ? '' : ` Drawn ${figures.transmittance(designUValue)}.`;
  return (
    <div class="gap-element">
      <h3>
        {element ?? 'No element named'}, {room}
      </h3>
      <p>
        {tied(`${told}${drawn}`)} <span class="small lesser">{logger}</span>
      </p>
      {local === null ? null : (
        <Rule title={`U-value where ${logger} sits`} unit="U-value" marks={surfaceMarks(surface)} small />
      )}
      <ProblemList problems={notes} />
    </div>
  );
}
