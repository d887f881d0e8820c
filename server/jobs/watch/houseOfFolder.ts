/** Which stored house a folder in the watched folder is of. */
import { refused } from '../../refused.ts';
import type { StoredHouse } from '../../store/reading.ts';

/** By its id or its name; "several" when more than one has the name. */
export function houseOf(folder: string, houses: readonly StoredHouse[]): string | 'several' | null {
  const byId = houses.find(({ id }) => id === folder);
  if (byId !== undefined) return byId.id;
  const named = houses.filter(({ name }) => alike(name, folder));
  return named.length > 1 ? 'several' : (named[0]?.id ?? null);
}

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
