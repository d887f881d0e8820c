/** How a heat loss was found, with the meaning of what it was found from. */
import type { Method } from '../../src/assessment.ts';
import { methodNames } from '../../src/words/names.ts';
import type { GlossaryTerm } from './glossary.ts';
import { Term } from './Term.tsx';

const explained: readonly (readonly [words: string, term: GlossaryTerm])[] = [
  ['design’s network', 'network'],
  ['heat capacity', 'heat capacity'],
];

export function MethodName({ method }: { readonly method: Method }) {
  const name = methodNames[method];
  const found = explained.find(([words]) => name.includes(words));
  if (found === undefined) return name;
  const [words, term] = found;
  const [before, after] = name.split(words);
  return (
    <>
      {before}
      <Term of={term}>{words}</Term>
      {after}
    </>
  );
}
