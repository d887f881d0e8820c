/** The last night that counts, opened: what was measured, the fall fitted to it, and what the drawing would have done. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { NightResult } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { againstDrawnSentence, foretoldFall } from '../../src/words/answer.ts';
import { figures } from '../../src/words/index.ts';
import { NightTable } from '../pages/NightTable.tsx';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { Term } from '../parts/Term.tsx';
import { FallPicture, Hatch } from './FallPicture.tsx';

interface LastNightProps {
  /** Left out where there is no page of the night. */
  readonly house?: string;
  readonly night: NightResult;
  readonly curve: NightCurve;
  readonly timeZone: string;
}

export function LastNight({ house, night, curve, timeZone }: LastNightProps) {
  const against = againstDrawnSentence(night);
  return (
    <ChartFrame
      title={`The night of ${figures.day(night.date)}`}
      summary={against ?? 'What the drawing would have done in this night cannot be worked out.'}
      table={() => <NightTable curve={curve} timeZone={timeZone} />}
    >
      <Key night={night} />
      <FallPicture curve={curve} night={night} timeZone={timeZone} spoken={spokenFall(night)} />
      <p class="small lesser">
        A fall of 1 <Term of="K" /> is a fall of one degree.
      </p>
      {night.foretoldDropK === undefined ? null : (
        <p class="small lesser">
          Hatched is where the house as drawn would have gone from the same evening on, with the same weather:
          the <Term of="interval">95 % interval</Term> of what drawing, mass, air and sun leave open.
        </p>
      )}
      {house === undefined ? null : (
        <p class="small way screen-only">
          <a href={`/house/${house}/nights?night=${night.date}`}>Open this night</a>
        </p>
      )}
    </ChartFrame>
  );
}

/** "Inside fell 1.2 K; as drawn 0.1 to 1.4 K." */
function spokenFall({ dropK, foretoldDropK }: NightResult): string {
  const drawn = foretoldDropK === undefined ? '' : `; as drawn ${foretoldFall(foretoldDropK)}`;
  return `Inside lost ${figures.kelvins(dropK ?? 0)}${drawn}.`;
}

function Key({ night: { dropK, foretoldDropK } }: { night: NightResult }) {
  const hatch = useId();
  return (
    <ul class="fall-key small figure">
      <li>
        <Sample>
          <line x1="0" x2="36" y1="8" y2="8" class="fall-inside" />
        </Sample>
        measured: {figures.kelvins(dropK ?? 0)}
      </li>
      <li>
        <Sample>
          <line x1="0" x2="36" y1="8" y2="8" class="fall-fitted" />
        </Sample>
        fitted
      </li>
      {foretoldDropK === undefined ? null : (
        <li>
          <Sample>
            <defs>
              <Hatch id={hatch} />
            </defs>
            <rect width="36" height="16" fill={`url(#${hatch})`} />
          </Sample>
          as drawn: {foretoldFall(foretoldDropK)}
        </li>
      )}
    </ul>
  );
}

const Sample = ({ children }: { children: ComponentChildren }) => (
  <svg width={36} height={16} aria-hidden="true">
    {children}
  </svg>
);
