/** A handover pack brought back in, as a house of its own. */
import { useState } from 'preact/hooks';
import { ProblemList } from '../parts/ProblemList.tsx';
import { type Brought, bringPack } from './bringPack.ts';

export function BringPack() {
  const [state, setState] = useState<Brought | 'under way' | null>(null);
  const bring = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    setState('under way');
    setState(await bringPack(file));
    input.value = '';
  };
  return (
    <div class="screen-only">
      <h3>
        <label for="pack">Bring a handover pack back in</label>
      </h3>
      <p>
        <input
          id="pack"
          type="file"
          accept=".zip,application/zip"
          disabled={state === 'under way'}
          onChange={({ currentTarget }) => void bring(currentTarget)}
        />
      </p>
      <p role="status">
        {state === 'under way' ? 'Reading the pack and working its hashes out.' : null}
        {state !== null && state !== 'under way' && state.kind === 'kept' ? <Kept {...state} /> : null}
      </p>
      {state !== null && state !== 'under way' && state.kind === 'not kept' ? (
        <ProblemList problems={state.problems} urgent />
      ) : null}
    </div>
  );
}

const Kept = ({ id, software }: Extract<Brought, { kind: 'kept' }>) => (
  <>
    {software === null
      ? 'It was a plain house folder, without hashes, so nothing vouches for its files.'
      : `Every file is as it was packed by ${software}.`}{' '}
    <a href={`/house/${id}`}>The house is here</a>, and is worked out anew: a second opinion.
  </>
);
