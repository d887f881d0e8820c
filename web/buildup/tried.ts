/** An edit tried on a house: taken when the house is still one, else refused with the reason. */
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { say } from '../../src/words/index.ts';

/** Changes the house that it is given. */
export type Edit = (house: House) => void;

export type Tried =
  | { readonly kind: 'taken'; readonly house: House }
  /** Sentences. */
  | { readonly kind: 'refused'; readonly reasons: readonly string[] };

/** @param edit is given a copy */
export function tried(house: House, edit: Edit): Tried {
  const copy = structuredClone(house);
  edit(copy);
  const text = JSON.stringify(copy);
  const reading = readHouse(text);
  // Not what was read: in that, the keys stand in the order of the schema and not as they were written.
  if (reading.kind === 'house') return { kind: 'taken', house: JSON.parse(text) as House };
  return { kind: 'refused', reasons: [...new Set(reading.problems.map(reasonOf))] };
}

function reasonOf(problem: Parameters<typeof say>[0]): string {
  const { text, remedy } = say(problem);
  return remedy === undefined ? text : `${text} ${remedy}`;
}
