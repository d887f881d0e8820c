import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cssString, escaped, html } from '../../src/sheet/html.ts';

/** What HTML says that a character reference stands for. */
const shown = (markup: string) => markup.replace(/&#(\d+);/g, (_, code) => String.fromCharCode(Number(code)));

/** Signs that mean something to HTML, CSS, a spreadsheet or the direction of writing, among any others. */
const hostile = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc
    .array(
      fc.constantFrom(
        '<',
        '>',
        '&',
        '"',
        "'",
        '</style>',
        '<script>',
        '=1+1',
        '\u202e',
        '\u2067',
        '\ud800',
        '\0',
        'שלום',
        '\\',
        '\n',
        '&lt;',
        '-->',
      ),
    )
    .map((parts) => parts.join('')),
);

test('any text comes out as itself, but for what HTML cannot show or what turns the words around', () => {
  fc.assert(
    fc.property(hostile, (text) => {
      const markup = escaped(text);
      expect(markup).not.toMatch(/[<>"']/);
      const fit = Array.from(text, (it) =>
        /[\p{Cc}\p{Cs}\uFFFE\uFFFF\u202A-\u202E\u2066-\u2069]/u.test(it) && !/[\t\n]/.test(it)
          ? '\uFFFD'
          : it,
      ).join('');
      expect(shown(markup)).toBe(fit);
    }),
    { numRuns: 500 },
  );
});

test('markup within markup stays markup, and everything else in it is text', () => {
  expect(html`<p>${html`<b>${'<i>'}</b>`}${null}${[1, '&']}</p>`.text).toBe(
    '<p><b>&#60;i&#62;</b>1&#38;</p>',
  );
});

test('a CSS string ends neither itself nor the style element', () => {
  fc.assert(
    fc.property(hostile, (text) => {
      const inner = cssString(text).slice(1, -1);
      expect(inner).not.toMatch(/["<>\n\r\f]/);
      expect(inner).not.toMatch(/\\(?![0-9a-f]+ )/);
    }),
    { numRuns: 500 },
  );
});
