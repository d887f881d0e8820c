/** A house as far as it has been begun: what came, what was guessed of it, what was asked, what the form says. */
import type { BringingPreview, FilePreview } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { placementsOf, withRemembered } from './answers.ts';
import { emptyDraft, filesOf, type HouseDraft, newPlacement, type Placement } from './draft.ts';
import { guessPlacements } from './guess.ts';
import { isAnswered, isSame, type Question, questionsIn } from './questions.ts';
import { placedAt, townOfZone } from './towns.ts';

export interface Begun {
  readonly draft: HouseDraft;
  /** The place is that of this computer's clock until the person says. */
  readonly placeGuessed: boolean;
  /** house.json was brought: what it does not name is left out of it, not guessed. */
  readonly brought: boolean;
  /** How each file was understood when it was first seen. */
  readonly first: ReadonlyMap<string, Imported>;
  /** Files that are read as the last one of their layout was. */
  readonly remembered: ReadonlySet<string>;
  /** All that were asked, also those that are answered by now. */
  readonly questions: readonly Question[];
}

/** @param zone of this computer's clock */
export function begunAnew(zone: string): Begun {
  const town = townOfZone(zone);
  const draft = town === undefined ? { ...emptyDraft, timeZone: zone } : placedAt(emptyDraft, town);
  return { ...nothing, draft, placeGuessed: true };
}

export const begunWith = (draft: HouseDraft): Begun => ({ ...nothing, draft, brought: true });

const nothing = {
  draft: emptyDraft,
  placeGuessed: false,
  brought: false,
  first: new Map<string, Imported>(),
  remembered: new Set<string>(),
  questions: [],
};

/** Once the files have been read: those that are new are placed, and what they leave open is asked. */
export function withPreview(begun: Begun, preview: BringingPreview): Begun {
  const fresh = preview.files.filter(({ imported }) => !begun.first.has(imported.file));
  const placed = fresh.reduce((draft, file) => continued(draft, file), begun.draft);
  const open = fresh.filter(
    ({ imported, change }) =>
      placementsOf(imported.file, placed).length === 0 && (change === null || change.kind === 'new'),
  );
  const imports = open.map(({ imported }) => imported);
  const guessed =
    begun.brought && preview.onto === null
      ? imports.map(({ file }) => newPlacement(file, 'left out'))
      : guessPlacements(imports, placed.placements);
  const answersOf = new Map(open.map(({ imported, remembered }) => [imported.file, remembered]));
  const answered = guessed.map((placement): Placement => {
    const remembered = answersOf.get(placement.file);
    return remembered ? withRemembered(placement, remembered) : placement;
  });
  const draft =
    answered.length === 0 ? placed : { ...placed, placements: [...placed.placements, ...answered] };
  const remembered = open.flatMap((it) => (it.remembered === null ? [] : [it.imported.file]));
  const asked = preview.files
    .flatMap(({ imported }) => questionsIn(imported, draft.timeZone))
    .filter((question) => placementsOf(question.file, draft).some(({ place }) => place !== 'left out'));
  const news = asked.filter(
    (it) => !begun.questions.some((old) => isSame(old, it)) && !isAnswered(it, draft),
  );
  return {
    ...begun,
    draft,
    first: new Map([...begun.first, ...fresh.map(({ imported }) => [imported.file, imported] as const)]),
    remembered: new Set([...begun.remembered, ...remembered]),
    questions: [...begun.questions, ...news],
  };
}

/** A later export of a stored logger continues it: the stored file is believed until the person has it otherwise. */
function continued(draft: HouseDraft, { imported: { file }, change }: FilePreview): HouseDraft {
  if (change?.kind !== 'continues' || change.of === null) return draft;
  const { of } = change;
  return {
    ...draft,
    placements: draft.placements.map((placement) =>
      filesOf(placement).includes(of) && !filesOf(placement).includes(file)
        ? { ...placement, continuedIn: [...placement.continuedIn, file] }
        : placement,
    ),
  };
}
