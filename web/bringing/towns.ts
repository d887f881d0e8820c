/** Towns that a house's place can be picked from: the principal places of the tz database. */
import type { HouseDraft } from './draft.ts';
import places from './towns.json';

export type Town = (typeof places)[number] & { readonly name: string };

/** By their names, as they are looked for. */
export const towns: readonly Town[] = places
  .map((place) => ({ ...place, name: nameIn(place.timeZone) }))
  .toSorted((a, b) => a.name.localeCompare(b.name, 'en'));

/** "America/Argentina/Buenos_Aires" is named after Buenos Aires. */
function nameIn(timeZone: string): string {
  return timeZone.slice(timeZone.lastIndexOf('/') + 1).replaceAll('_', ' ');
}

const countries = new Intl.DisplayNames('en-GB', { type: 'region' });

/** "London, United Kingdom" */
export const townName = ({ name, country }: Town): string => `${name}, ${countries.of(country) ?? country}`;

/** The town where the form's coordinates and zone lie; undefined for any other place. */
export const townAt = ({ latitude, longitude, timeZone }: HouseDraft): Town | undefined =>
  towns.find(
    (town) =>
      String(town.latitude) === latitude &&
      String(town.longitude) === longitude &&
      town.timeZone === timeZone,
  );

export const placedAt = (draft: HouseDraft, town: Town): HouseDraft => ({
  ...draft,
  latitude: String(town.latitude),
  longitude: String(town.longitude),
  timeZone: town.timeZone,
});

/** The principal town of a zone: where a house may be until the person says. */
export const townOfZone = (timeZone: string): Town | undefined =>
  towns.find((town) => town.timeZone === timeZone);
