/** The stages of a stored house, set anew: house.json with nothing else changed, brought onto the house and kept. */
import {
  dropBringing,
  getBringing,
  getHouse,
  keepBringing,
  Refused,
  sendFile,
  startBringing,
} from '../api.ts';
import type { Stage } from './stageDraft.ts';

/** @throws Refused where the house cannot be so; nothing is changed then */
export async function keepStages(id: string, stages: readonly Stage[]): Promise<void> {
  const { stages: _, ...others } = (await getHouse(id)).house;
  const house = stages.length === 0 ? others : { ...others, stages };
  const bringing = await startBringing(id);
  try {
    const file = new Blob([`${JSON.stringify(house, null, 2)}\n`], { type: 'application/json' });
    const { signal } = new AbortController();
    await sendFile(bringing.id, 'house.json', file, { tell: () => {}, signal });
    const { ready, problems } = await getBringing(bringing.id);
    if (!ready) throw new Refused(problems);
    await keepBringing(bringing.id);
  } catch (thrown) {
    await dropBringing(bringing.id).catch(() => {});
    throw thrown;
  }
}
