/** A pack, read and held to its hashes on this page, then brought as the house folder that it is. */

import { version } from '../../package.json';
import type { Message } from '../../src/assessment.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { dropBringing, getBringing, keepBringing, problemsOf, sendFile, startBringing } from '../api.ts';

export type Brought =
  | {
      readonly kind: 'kept';
      readonly id: string;
      /** What packed it; null for a plain house folder, which has no hashes. */
      readonly software: string | null;
      /** When another version made it. */
      readonly otherVersion: Message | null;
    }
  | { readonly kind: 'not kept'; readonly problems: readonly Message[] };

/** Stores the whole house or nothing of it. */
export async function bringPack(file: Blob): Promise<Brought> {
  const pack = await readPack(new Uint8Array(await file.arrayBuffer()), sha256, `Stillwarm ${version}`);
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
    if (ready) {
      const { software, otherVersion } = pack;
      return { kind: 'kept', id: (await keepBringing(id)).id, software, otherVersion };
    }
    await dropBringing(id);
    return {
      kind: 'not kept',
      problems: [...problems, ...(pack.otherVersion === null ? [] : [pack.otherVersion])],
    };
  } catch (thrown) {
    if (id !== null) await dropBringing(id).catch(() => {});
    return { kind: 'not kept', problems: problemsOf(thrown) };
  }
}

async function sha256(bytes: Uint8Array): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', Uint8Array.from(bytes));
  return Array.from(new Uint8Array(hash), (it) => it.toString(16).padStart(2, '0')).join('');
}
