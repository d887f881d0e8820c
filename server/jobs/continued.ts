/** The text of `house.json` with the later exports that were brought in their loggers' `continuedIn`. */
import { applyEdits, modify } from 'jsonc-parser';
import type { House } from '../../src/house.ts';
import { filesOf } from '../../src/record/index.ts';

/**
 * Everything else stays as the person has written it.
 *
 * @param house     what the text says
 * @param continued of each later export the stored file of the same logger, by its name
 */
export function continuedText(text: string, house: House, continued: ReadonlyMap<string, string>): string {
  return (['loggers', 'weather', 'heat'] as const).reduce(
    (before, key) =>
      (house[key] ?? []).reduce((written, entry, i) => {
        const later = Array.from(continued).flatMap(([name, of]) =>
          filesOf(entry).includes(of) ? [name] : [],
        );
        if (later.length === 0) return written;
        const all = [...(entry.continuedIn ?? []), ...later];
        const formattingOptions = { insertSpaces: true, tabSize: 2 };
        return applyEdits(written, modify(written, [key, i, 'continuedIn'], all, { formattingOptions }));
      }, before),
    text.replace(/^\uFEFF/, ''),
  );
}
