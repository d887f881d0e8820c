/** What a sentence is made of, and what several of them share. */

export interface Sentence {
  readonly text: string;
  readonly remedy?: string;
}

/** One sentence for each code of a room's findings: a code without one does not compile. */
export type SentencesFor<Finding extends { readonly code: string }> = {
  readonly [C in Finding['code']]: (it: Extract<Finding, { code: C }>) => Sentence;
};

export const lines = (numbers: readonly number[], total: number) =>
  `${numbers.length === 1 ? 'line' : 'lines'} ${numbers.join(', ')}${total > numbers.length ? ', …' : ''}`;

export const list = (names: readonly string[]) => names.map((name) => `“${name}”`).join(', ');
