/** What is still missing before a house can be kept, in words. */
import type { BringingPreview } from '../../server/api/shapes.ts';
import type { HouseDraft } from './draft.ts';
import { placedEnough } from './guess.ts';
import { problemsOfDraft } from './problems.ts';

export function stillMissing(draft: HouseDraft, preview: BringingPreview): string[] {
  const { house } = problemsOfDraft(draft);
  const { inside, outside } = placedEnough(draft.placements);
  const wrong = draft.placements.filter(
    (placement) => Object.keys(problemsOfDraft(draft).of(placement)).length > 0,
  );
  const { name, latitude, longitude, timeZone, ...others } = house;
  const words = [
    ...(name === undefined ? [] : [name]),
    ...((latitude ?? longitude ?? timeZone) ? ['Say where the house stands: the nearest town will do.'] : []),
    ...Object.values(others),
    ...(inside ? [] : ['Place a logger inside: without one there is no house to see cooling.']),
    ...(outside ? [] : ['Place a logger outside, or a weather station: the outdoor temperature is needed.']),
    ...wrong.map(({ file }) => `Mend what is marked at ${file}.`),
  ];
  const nothingNew = preview.onto !== null && preview.files.every(({ change }) => change?.kind === 'same');
  if (nothingNew) return ['Nothing of this is new: there is nothing to add.'];
  if (words.length > 0 || preview.ready) return words;
  return preview.missing.length > 0
    ? [`Bring what house.json names and has not come: ${preview.missing.join(', ')}.`]
    : ['Mend what is named at the top under “Not right yet”.'];
}
