/** What became of a handover pack: the house that it is now, or why nothing of it was taken. */
import { ProblemList } from '../parts/ProblemList.tsx';
import type { Brought } from './bringPack.ts';
import type { PackComing } from './usePack.ts';

export const PackBrought = ({ state }: Pick<PackComing, 'state'>) => (
  <>
    <p role="status">
      {state === 'under way' ? 'Reading the pack and working its hashes out.' : null}
      {state !== null && state !== 'under way' && state.kind === 'kept' ? <Kept {...state} /> : null}
    </p>
    {state !== null && state !== 'under way' && state.kind === 'not kept' ? (
      <ProblemList problems={state.problems} urgent />
    ) : null}
  </>
);

const Kept = ({ id, software, otherVersion }: Extract<Brought, { kind: 'kept' }>) => (
  <>
    {software === null
      ? 'It was a plain house folder, without hashes, so nothing vouches for its files.'
      : `Every file is as it was packed by ${software}.`}{' '}
    {otherVersion === null ? null : `${otherVersion.text} ${otherVersion.remedy} `}
    <a href={`/house/${id}`}>The house is here</a>, and is worked out anew: a second opinion.
  </>
);
