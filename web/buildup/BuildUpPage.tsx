/** The design as it is drawn, to be changed: pick an element in the cut through the house, and edit its layers. */
import { useRoute } from 'preact-iso';
import { getHouse } from '../api.ts';
import { PageFrame } from '../parts/PageFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';
import { useLoaded } from '../useLoaded.ts';
import { BuildUps } from './BuildUps.tsx';

const TITLE = 'Build-ups';

export function BuildUpPage() {
  const { id } = useRoute().params;
  const { loaded } = useLoaded((signal) => getHouse(id, signal), id);
  if (loaded.kind === 'failed')
    return (
      <PageFrame title="This house cannot be shown">
        <ProblemList problems={loaded.problems} />
      </PageFrame>
    );
  if (loaded.kind === 'loading')
    return (
      <PageFrame title={TITLE} house={{ id, name: ' ', invented: false }} here="As drawn">
        <Skeleton lines={[0.8, 0.9, 0.5]} />
        <Skeleton height={320} />
      </PageFrame>
    );
  const house = loaded.value;
  return (
    <PageFrame title={TITLE} house={house} here="As drawn">
      <BuildUps key={house.id} id={house.id} first={house.house} />
    </PageFrame>
  );
}
