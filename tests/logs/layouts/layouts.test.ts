/** Every file of this folder, read: what it shows, and its readings as a person would take them, stand beside it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { LogHints } from '../../../src/logs/index.ts';
import { understand } from '../../../src/logs/understand.ts';
import { channelsOf, hints, read } from '../reading.ts';

interface Expected {
  readonly what: string;
  readonly hints?: Partial<LogHints>;
  readonly times: readonly string[];
  /** One value per time in SI; null where the channel has none. */
  readonly channels: readonly {
    readonly column: string;
    readonly quantity: string;
    readonly values: readonly (number | null)[];
  }[];
  readonly findings: readonly { readonly code: string }[];
  /** Of what a page would show of the file, whatever is stated here. */
  readonly understood?: object;
}

const content = (name: string) => readFileSync(new URL(name, import.meta.url));
const files = readdirSync(new URL('.', import.meta.url))
  .filter((name) => name.endsWith('.json'))
  .map((name) => {
    const expected: Expected = JSON.parse(content(name).toString());
    return { ...expected, file: name.replace(/\.json$/, '') };
  });

describe('readLog reads', () => {
  test.each(files)('$what ($file)', ({ file, hints: changed, times, channels, findings }) => {
    const reading = read(content(file), changed);
    expect(reading.findings).toMatchObject(findings);
    const got = channelsOf(reading);
    expect(got.map(([column, quantity]) => ({ column, quantity }))).toEqual(
      channels.map(({ column, quantity }) => ({ column, quantity })),
    );
    channels.forEach(({ values }, c) => {
      expect(got[c][2]).toEqual(times.filter((_, i) => values[i] !== null));
      const wanted = values.filter((value) => value !== null);
      // units are converted by one product and one sum: rounding only
      got[c][3].forEach((value, i) => {
        expect(Math.abs(value - wanted[i])).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(wanted[i])));
      });
    });
  });
});

describe('what a page can show of', () => {
  test.each(files.filter(({ understood }) => understood !== undefined))('$what ($file)', (it) => {
    const log = understand(it.file, content(it.file), hints(it.hints));
    expect(log.kind === 'log' && log.understood).toMatchObject(it.understood ?? {});
  });
});
