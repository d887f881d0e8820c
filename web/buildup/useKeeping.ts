/** The changed house on its way into the store. */
import { useState } from 'preact/hooks';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { keepHouse, problemsOf } from '../api.ts';

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
  async function keep(house: House): Promise<void> {
    setState('keeping');
    setProblems([]);
    try {
      await keepHouse(id, stored, house);
      setStored(house);
      setState('kept');
    } catch (thrown) {
      setProblems(problemsOf(thrown));
      setState('not yet');
    }
  }
  return { state, problems, stored, keep };
}
