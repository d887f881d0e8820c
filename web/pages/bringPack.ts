/** A pack, read and held to its hashes on this page, then brought as the house folder that it is. */
import type { Message } from '../../src/assessment.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { dropBringing, getBringing, keepBringing, problemsOf, sendFile, startBringing } from '../api.ts';

export type Brought =
  | {
      readonly kind: 'kept';
      readonly id: string;
      /** What packed it; null for a plain house folder, which has no hashes. */
      readonly software: string | null;
    }
  | { readonly kind: 'not kept'; readonly problems: readonly Message[] };

/** Stores the whole house or nothing of it. */
export async function bringPack(file: Blob): Promise<Brought> {
  const pack = await readPack(new Uint8Array(await file.arrayBuffer()), sha256);
  if (pack.kind === 'refused') return { kind: 'not kept', problems: pack.problems };
  let id: string | null = null;
  try {
    id = (await startBringing(null)).id;
    for (const [name, bytes] of pack.files)
      await sendFile(id, name, new Blob([Uint8Array.from(bytes)]), {
        tell: () => {},
        signal: new AbortController().signal,
      });
    const { ready, problems } = await getBringing(id);
    if (ready) return { kind: 'kept', id: (await keepBringing(id)).id, software: pack.software };
    await dropBringing(id);
    return { kind: 'not kept', problems: [...problems, ...madeElsewhere(pack.software)] };
  } catch (thrown) {
    if (id !== null) await dropBringing(id).catch(() => {});
    return { kind: 'not kept', problems: problemsOf(thrown) };
  }
}

const madeElsewhere = (software: string | null): Message[] =>
  software === null
    ? []
    : [
        {
          code: 'pack-not-read',
          text: `This pack was made by ${software}. If that is a newer version than this one, its house.json may say what this one does not know yet. Nothing of it was taken.`,
          remedy: 'Bring it to that version or a newer one.',
        },
      ];

async function sha256(bytes: Uint8Array): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', Uint8Array.from(bytes));
  return Array.from(new Uint8Array(hash), (it) => it.toString(16).padStart(2, '0')).join('');
}
