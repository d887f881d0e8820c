/** What is to be known of a pack that another version made. */
import type { Message } from '../../assessment.ts';

/**
 * @param packed what made the pack, "Stillwarm 0.3.0"
 * @param own    what reads it
 * @returns null where they are the same
 */
export function otherVersion(packed: string, own: string): Message | null {
  if (packed === own) return null;
  return isNewer(packed, own)
    ? {
        code: 'pack-newer-version',
        text: `This pack was made by ${packed}, which is newer than the ${own} that reads it. Its house.json may say what this one does not know yet, and its figures may come out otherwise here.`,
        remedy: `To have the packed figures again to the last digit, read it with ${packed}.`,
      }
    : {
        code: 'pack-other-version',
        text: `This pack was made by ${packed}; ${own} reads it. Worked out anew, its figures may come out otherwise.`,
        remedy: `What was handed over stands in its sheet as it was; ${packed} works the same figures out again.`,
      };
}

/** By the numbers in their names; what has none is not known to be newer. */
function isNewer(packed: string, own: string): boolean {
  const [theirs, ours] = [packed, own].map(
    (it) => /(\d+)\.(\d+)\.(\d+)/.exec(it)?.slice(1).map(Number) ?? [],
  );
  const at = theirs.findIndex((it, i) => it !== ours[i]);
  return at >= 0 && theirs[at] > (ours[at] ?? Number.POSITIVE_INFINITY);
}
