/** Several exports of one logger: one entry of house.json, in which the file named first is believed. */
import { placementsOf } from './answers.ts';
import { filesOf, type HouseDraft, type Placement } from './draft.ts';

/** Makes a file a later export of the logger that another file is of. */
export function asLaterExport(draft: HouseDraft, file: string, of: string): HouseDraft {
  const own = placementsOf(file, draft);
  const later = [file, ...own.flatMap(filesOf).filter((it) => it !== file)];
  return {
    ...draft,
    placements: draft.placements
      .filter((placement) => !own.includes(placement))
      .map((it) =>
        filesOf(it).includes(of) ? { ...it, continuedIn: [...it.continuedIn, ...new Set(later)] } : it,
      ),
  };
}

/** Makes a file that was an export of another's logger a logger by itself, at the same place until it is said. */
export function byItself(draft: HouseDraft, file: string): HouseDraft {
  const [owner] = placementsOf(file, draft);
  if (owner === undefined || owner.continuedIn.length === 0) return draft;
  const rest = draft.placements.map((placement) => {
    const [first, ...continuedIn] = filesOf(placement).filter((it) => it !== file);
    return first === undefined ? placement : { ...placement, file: first, continuedIn };
  });
  const nothingSaid = { room: '', volume: '', element: '', rest: null, guess: 'nothing' } as const;
  const alone: Placement = { ...owner, file, continuedIn: [], ...nothingSaid };
  return { ...draft, placements: [...rest, alone] };
}

/** Which of two exports is believed where both give an instant: the one that stands first. */
export function believing(draft: HouseDraft, believed: string, other: string): HouseDraft {
  return {
    ...draft,
    placements: draft.placements.map((placement) => {
      const files = filesOf(placement);
      if (!files.includes(believed) || !files.includes(other)) return placement;
      const [at, from] = [files.indexOf(other), files.indexOf(believed)];
      if (from < at) return placement;
      const without = files.filter((file) => file !== believed);
      const [file, ...continuedIn] = [...without.slice(0, at), believed, ...without.slice(at)];
      return { ...placement, file, continuedIn };
    }),
  };
}

/** Whether an export is believed before another of the same logger. */
export const isBelieved = (draft: HouseDraft, file: string, other: string): boolean =>
  draft.placements.some((placement) => {
    const files = filesOf(placement);
    return files.includes(file) && files.includes(other) && files.indexOf(file) < files.indexOf(other);
  });
