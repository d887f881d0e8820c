/** Which stored house a folder in the watched folder is of. */
import type { Message } from '../../../src/assessment.ts';
import { refused } from '../../refused.ts';
import type { StoredHouse } from '../../store/reading.ts';

/**
 * By its id or its name; "several" when more than one has the name.
 *
 * @param begun the house that was begun from the folder; it stays its own when either is renamed
 */
export function houseOf(
  folder: string,
  houses: readonly StoredHouse[],
  begun: string | null,
): string | 'several' | null {
  const byId = houses.find(({ id }) => id === folder) ?? houses.find(({ id }) => id === begun);
  if (byId !== undefined) return byId.id;
  const named = houses.filter(({ name }) => alike(name, folder));
  return named.length > 1 ? 'several' : (named[0]?.id ?? null);
}

/** What is remembered of a house.json: how it was, and the house that was begun from it. */
export const stampAs = (stamp: string, house: string) => `${stamp} as ${house}`;
export const begunAs = (stamp: string | undefined) => / as (\S+)$/.exec(stamp ?? '')?.[1] ?? null;
export const isStamped = (remembered: string, stamp: string) =>
  remembered === stamp || (remembered.startsWith(`${stamp} as `) && begunAs(remembered) !== null);

export const isCalled = (name: string, houses: readonly StoredHouse[]) =>
  houses.some((house) => alike(house.name, name));

const alike = (one: string, other: string) =>
  one.trim().normalize().toLowerCase() === other.trim().normalize().toLowerCase();

export const noHouse = (folder: string) =>
  refused(
    404,
    'no-house-of-folder',
    `There is no house of the name “${folder}”.`,
    'Name the folder as the house is called, or put the house.json of a new house into it.',
  );

export const severalHouses = (folder: string) =>
  refused(
    409,
    'several-houses-of-folder',
    `Several houses are called “${folder}”.`,
    "Name the folder by the house's id: the last part of its page's address.",
  );

export const houseThere = (name: string) =>
  refused(
    409,
    'house-there-already',
    `There is a house called “${name}” already; none was begun.`,
    `If these are its logs, name the folder “${name}”; if this is another house, give it another name in house.json.`,
  );

/** A house.json that says otherwise than the house that its folder is of. */
export const houseFileApart = (path: string): Message => ({
  code: 'house-json-not-read-again',
  text: 'This house.json is not as the house is here; only logs are read into a house that is there.',
  where: { file: path },
  remedy: "If it is the right one, bring it on the house's page.",
});
