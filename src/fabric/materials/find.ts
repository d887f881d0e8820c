/** Finding a material by what it is called on site. */
import { distance } from 'fastest-levenshtein';
import { materials } from './materials.ts';
import type { Material } from './value.ts';

/** Costs of the ways a word may fit [–]; a slip of the finger costs more than an end left out. */
const begins = 1;
const within = 2;
const slipped = 3;
/** What an alias costs beside the name itself. */
const alias = 0.5;

/**
 * Materials that fit every word typed, best first: whole words, then beginnings, parts of words, and words
 * with a slip or two. Figures that no name has ("100 mm") are passed over. Without words: all of them, in
 * order.
 */
export function findMaterials(text: string): readonly Material[] {
  const typed = wordsOf(text);
  const fitting = thoseThatFit(typed);
  return fitting.length > 0 ? fitting : thoseThatFit(typed.filter((it) => !isLength(it)));
}

const isLength = (word: string) => /^[\d.]+(mm|cm|m)?$|^mm$|^cm$/.test(word);

function thoseThatFit(typed: readonly string[]): readonly Material[] {
  if (typed.length === 0) return materials;
  return materials
    .map((material) => ({ material, cost: costOf(material, typed) }))
    .filter(({ cost }) => cost < Infinity)
    .sort((a, b) => a.cost - b.cost || a.material.name.length - b.material.name.length)
    .map(({ material }) => material);
}

/** The material of exactly this name. @throws RangeError if there is none */
export function materialNamed(name: string): Material {
  const material = materials.find((it) => it.name === name);
  if (material === undefined) throw new RangeError(`no material is called "${name}"`);
  return material;
}

/** The least cost at which one of its names has every word typed; infinite when none has. */
function costOf({ name, aliases }: Material, typed: readonly string[]): number {
  return Math.min(
    costOfName(wordsOf(name), typed),
    ...aliases.map((it) => alias + costOfName(wordsOf(it), typed)),
    // Words spread over name and aliases, as in "kraft vapour retarder".
    2 * alias + costOfName(wordsOf([name, ...aliases].join(' ')), typed),
  );
}

function costOfName(words: readonly string[], typed: readonly string[]): number {
  return typed.reduce((cost, it) => cost + Math.min(...words.map((word) => costOfWord(word, it))), 0);
}

function costOfWord(word: string, typed: string): number {
  if (word === typed) return 0;
  if (word.startsWith(typed)) return begins;
  if (typed.length >= 3 && word.includes(typed)) return within;
  const slips = distance(word, typed);
  return slips <= Math.floor(typed.length / 4) ? slipped * slips : Infinity;
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((it) => it !== '');
}
