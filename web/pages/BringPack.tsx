/** A handover pack brought back in, as a house of its own. */
import { PackBrought } from './PackBrought.tsx';
import { usePack } from './usePack.ts';

export function BringPack() {
  const { state, bring } = usePack();
  const take = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    await bring(file);
    input.value = '';
  };
  return (
    <div class="screen-only field">
      <h3>
        <label for="pack">Bring a handover pack back in</label>
      </h3>
      <p>
        <input
          id="pack"
          type="file"
          accept=".zip,application/zip"
          disabled={state === 'under way'}
          onChange={({ currentTarget }) => void take(currentTarget)}
        />
      </p>
      <PackBrought state={state} />
    </div>
  );
}
