/** What is wrong with what was typed, field by field, by the schema of house.json and in the form's own words. */
import { houseSchema } from '../../src/house.ts';
import type { HouseDraft, Placement, Section } from './draft.ts';
import { houseOf, placedIn } from './writeDraft.ts';

export type HouseField = 'name' | 'latitude' | 'longitude' | 'timeZone' | 'floorArea' | 'volume';
export type PlacementField = 'room' | 'volume' | 'timeZone' | 'clockOffset';

export interface DraftProblems {
  readonly house: Readonly<Partial<Record<HouseField, string>>>;
  readonly of: (placement: Placement) => Readonly<Partial<Record<PlacementField, string>>>;
  /** Whether the house can be read with what was typed; only its name may be missing. */
  readonly canBeTried: boolean;
}

export function problemsOfDraft(draft: HouseDraft): DraftProblems {
  const checked = houseSchema.safeParse(houseOf(draft));
  const house: Partial<Record<HouseField, string>> = {};
  const placements = new Map<Placement, Partial<Record<PlacementField, string>>>();
  for (const { path } of checked.error?.issues ?? []) {
    const [first, second, third] = path;
    const field = houseFields[String(first === 'location' ? (second ?? 'latitude') : first)];
    if (field !== undefined && !isSection(first)) house[field] = houseWords[field];
    if (!isSection(first)) continue;
    const placement = placedIn(first, draft)[Number(second)];
    const own = placementFields[String(third)];
    if (placement !== undefined && own !== undefined)
      placements.set(placement, { ...placements.get(placement), [own]: placementWords[own] });
  }
  return {
    house,
    of: (placement) => placements.get(placement) ?? {},
    canBeTried: placements.size === 0 && Object.keys(house).every((field) => field === 'name'),
  };
}

const isSection = (key: unknown): key is Section => key === 'loggers' || key === 'weather' || key === 'heat';

const houseFields: Readonly<Record<string, HouseField | undefined>> = {
  name: 'name',
  latitude: 'latitude',
  longitude: 'longitude',
  timeZone: 'timeZone',
  floorAreaM2: 'floorArea',
  volumeM3: 'volume',
};

const placementFields: Readonly<Record<string, PlacementField | undefined>> = {
  room: 'room',
  volumeM3: 'volume',
  timeZone: 'timeZone',
  clockOffsetMin: 'clockOffset',
};

const houseWords: Readonly<Record<HouseField, string>> = {
  name: 'Give the house a name of at most 200 letters.',
  latitude: 'Give degrees from −90 to 90; north is positive.',
  longitude: 'Give degrees from −180 to 180; east is positive.',
  timeZone: 'Give a zone by its name, such as Europe/London.',
  floorArea: 'Give square metres, a number above zero, or nothing.',
  volume: 'Give cubic metres, a number above zero, or nothing.',
};

const placementWords: Readonly<Record<PlacementField, string>> = {
  room: 'Give a name of at most 200 letters.',
  volume: 'Give cubic metres, a number above zero, or nothing.',
  timeZone: 'Give a zone by its name, such as Europe/London or UTC.',
  clockOffset: 'Give minutes, such as 60 or −5.',
};
