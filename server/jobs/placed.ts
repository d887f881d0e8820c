/** Files that a house does not name, placed in it all the same: so that they can be read, and read as its own. */
import type { House } from '../../src/house.ts';
import { type Entry, filesNamed, filesOf } from '../../src/record/index.ts';

/** Tries every file as a later export of every logger. */
export const withAllTried = (house: House, brought: readonly string[]): House =>
  continuing(house, () => brought);

/**
 * Each file as the later export that it seems to be, else as a logger of its own.
 *
 * @param of the stored file of the same logger; null where there is none
 */
export function withPlaced(
  house: House,
  unnamed: readonly string[],
  of: (name: string) => string | null,
): House {
  const known = continuing(house, (entry) =>
    unnamed.filter((name) => filesOf(entry).includes(of(name) ?? '')),
  );
  const named = filesNamed(known);
  const alone = unnamed.filter((name) => !named.includes(name));
  return {
    ...known,
    loggers: [...known.loggers, ...alone.map((file) => ({ file, place: 'inside' as const }))],
  };
}

/** Before there is a house: nothing of it is shown but the clock, which is UTC's. */
export const houseless: House = {
  name: 'Not named yet',
  location: { latitude: 0, longitude: 0, timeZone: 'UTC' },
  loggers: [],
};

function continuing(house: House, later: (entry: Entry) => readonly string[]): House {
  const extended = <E extends Entry>(entry: E): E =>
    entry.file === undefined
      ? entry
      : { ...entry, continuedIn: [...(entry.continuedIn ?? []), ...later(entry)] };
  return {
    ...house,
    loggers: house.loggers.map(extended),
    ...(house.weather && { weather: house.weather.map(extended) }),
    ...(house.heat && { heat: house.heat.map(extended) }),
  };
}
