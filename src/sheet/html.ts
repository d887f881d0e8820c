/** Text -> markup. Whatever stands in a `html` template is text and stays text, unless it is markup already. */

export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Content = Markup | string | number | null | readonly Content[];

/** Markup with everything in it escaped: html`<td>${name}</td>`. Null is nothing; a list is its parts in a row. */
export const html = (parts: TemplateStringsArray, ...contents: readonly Content[]): Markup =>
  new Markup(parts.map((part, i) => (i === 0 ? part : `${markupOf(contents[i - 1])}${part}`)).join(''));

function markupOf(content: Content): string {
  if (content === null) return '';
  if (content instanceof Markup) return content.text;
  if (typeof content === 'string') return escaped(content);
  return typeof content === 'number' ? String(content) : content.map(markupOf).join('');
}

/**
 * The text as HTML shows it, between tags and in quoted attributes. What HTML has no character for (control
 * characters, halves of pairs) and what would turn the words after it around (embeddings and overrides of the
 * direction) becomes the mark of an unknown character.
 */
export const escaped = (text: string): string =>
  text.replace(UNSHOWABLE, '\uFFFD').replace(/[&<>"']/g, (it) => `&#${it.charCodeAt(0)};`);

const UNSHOWABLE = /(?![\t\n])[\p{Cc}\p{Cs}\uFFFE\uFFFF\u202A-\u202E\u2066-\u2069]/gu;

/** A name of the house's own, which may run the other way than the words around it. */
export const named = (name: string) => html`<bdi>${name}</bdi>`;

/** The text as a CSS string within a style element. */
export const cssString = (text: string): string =>
  `"${text.replace(/[^ \p{L}\p{N}]/gu, (it) => (/\s/u.test(it) ? ' ' : `\\${it.codePointAt(0)?.toString(16)} `))}"`;
