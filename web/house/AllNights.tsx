/** Every night as a small dark band, as soon as their curves have come. */
import type { NightsAnswer } from '../../server/api/shapes.ts';
import type { NightResult } from '../../src/assessment.ts';
import { NightRow } from '../charts/NightRow.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import type { Loaded } from '../useLoaded.ts';

interface AllNightsProps {
  readonly loaded: Loaded<NightsAnswer>;
  readonly nights: readonly NightResult[];
  /** What touching one does. */
  readonly touch: string;
  readonly href: (date: string) => string;
  readonly selected?: string;
}

export function AllNights({ loaded, nights, touch, ...row }: AllNightsProps) {
  return (
    <section>
      <h2>Nights</h2>
      <p>
        Each dark band is a night, the newest at the right: inside falls, outdoors lies beneath.
        <span class="screen-only"> {touch}</span>
      </p>
      {loaded.kind === 'failed' ? <ProblemList problems={loaded.problems} /> : null}
      {loaded.kind === 'loaded' ? (
        <NightRow curves={loaded.value.curves} nights={nights} {...row} />
      ) : (
        <Skeleton height={230} />
      )}
    </section>
  );
}
