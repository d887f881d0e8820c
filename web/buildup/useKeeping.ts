/** The changed house on its way into the store: a bringing onto the house that holds house.json alone. */
import { useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import {
  dropBringing,
  getBringing,
  getHouse,
  keepBringing,
  problemsOf,
  sendFile,
  startBringing,
} from '../api.ts';

export type KeptState = 'not yet' | 'keeping' | 'kept';

export interface Keeping {
  readonly state: KeptState;
  readonly problems: readonly Message[];
  /** The house as it is stored, as far as this page knows. */
  readonly stored: House;
  readonly keep: (house: House) => Promise<void>;
}

export function useKeeping(id: string, first: House): Keeping {
  const [state, setState] = useState<KeptState>('not yet');
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const [stored, setStored] = useState(first);
  /** As the server tells it, to see whether it was changed from elsewhere. */
  const [told, setTold] = useState(() => JSON.stringify(first));
  async function keep(house: House): Promise<void> {
    setState('keeping');
    setProblems([]);
    try {
      const against = await problemsOfKeeping(id, house, told);
      setProblems(against);
      setState(against.length === 0 ? 'kept' : 'not yet');
      if (against.length > 0) return;
      setStored(house);
      setTold(JSON.stringify((await getHouse(id)).house));
    } catch (thrown) {
      setProblems(problemsOf(thrown));
      setState('not yet');
    }
  }
  return { state, problems, stored, keep };
}

const changedElsewhere: Message = {
  code: 'house-changed-elsewhere',
  text: 'This house was changed elsewhere since this page was opened, so these changes were not kept.',
  remedy: 'Open the page again in another tab, and make them there.',
};

/** @returns what speaks against it; nothing when it is kept */
async function problemsOfKeeping(id: string, house: House, told: string): Promise<readonly Message[]> {
  if (JSON.stringify((await getHouse(id)).house) !== told) return [changedElsewhere];
  const bringing = await startBringing(id);
  try {
    const file = new Blob([`${JSON.stringify(house, null, 2)}\n`], { type: 'application/json' });
    const { signal } = new AbortController();
    await sendFile(bringing.id, 'house.json', file, { tell: () => {}, signal });
    const preview = await getBringing(bringing.id);
    if (!preview.ready) {
      await dropBringing(bringing.id);
      return preview.problems;
    }
    await keepBringing(bringing.id);
    return [];
  } catch (thrown) {
    await dropBringing(bringing.id).catch(() => {});
    throw thrown;
  }
}
