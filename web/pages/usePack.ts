/** A handover pack on its way in, and what became of it. */
import { useState } from 'preact/hooks';
import { type Brought, bringPack } from './bringPack.ts';

export interface PackComing {
  readonly state: Brought | 'under way' | null;
  readonly bring: (file: File) => Promise<void>;
}

/** @param kept called when a house has come of it */
export function usePack(kept: () => void = () => {}): PackComing {
  const [state, setState] = useState<PackComing['state']>(null);
  const bring = async (file: File) => {
    setState('under way');
    const brought = await bringPack(file);
    setState(brought);
    if (brought.kind === 'kept') kept();
  };
  return { state, bring };
}
