/** The house that is being begun: what was guessed and what was typed, written and read again as it changes. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BringingPreview } from '../../server/api/shapes.ts';
import { type Begun, begunAnew, begunWith, withPreview } from './begun.ts';
import type { HouseDraft } from './draft.ts';
import { problemsOfDraft } from './problems.ts';
import { draftOf } from './readDraft.ts';
import { houseJsonOf } from './writeDraft.ts';

/** What is typed is read again once the person has paused for this long [ms]. */
const PAUSE = 400;

export interface BeginningHouse {
  /** Null where house.json was brought and no form can be made of it. */
  readonly begun: Begun | null;
  /** Something was changed that is not read yet. */
  readonly waiting: boolean;
  readonly change: (draft: HouseDraft) => void;
  /** Leaves the house.json that was brought, and begins one from the files. */
  readonly anew: () => void;
  /** As nothing had come. */
  readonly begin: () => void;
}

interface Given {
  readonly preview: BringingPreview | null;
  /** The house.json that was brought last; null while none was. */
  readonly broughtHouse: { readonly text: string } | null;
  /** The house.json of the stored house that is added to; null until it is known and for a house of its own. */
  readonly stored: string | null;
  readonly write: (text: string, again: boolean) => void;
}

export function useBegun({ preview, broughtHouse, stored, write }: Given): BeginningHouse {
  const [begun, setBegun] = useState<Begun | null>(() => begunAnew(zoneOfComputer()));
  const [waiting, setWaiting] = useState(false);
  const latest = useRef(begun);
  latest.current = begun;
  /** What the files were read by last. */
  const read = useRef('');
  /** Something was written while the first reading was under way, which may not have seen it. */
  const unseen = useRef(false);
  const pause = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(pause.current), []);

  const begin = () => {
    const draft = stored === null ? null : draftOf(stored);
    setBegun(draft === null ? begunAnew(zoneOfComputer()) : begunWith(draft));
  };
  const writeNow = (draft: HouseDraft) => {
    if (!problemsOfDraft(draft).canBeTried) return;
    unseen.current = preview === null;
    const now = asRead(draft);
    const before = latest.current?.brought ? (broughtHouse?.text ?? stored ?? undefined) : undefined;
    write(houseJsonOf(draft, before), preview !== null && (preview.house === null || now !== read.current));
    if (preview !== null) read.current = now;
  };
  const look = (before: Begun, seen: BringingPreview) => {
    const next = withPreview(before, seen);
    setBegun(next);
    if (unseen.current || houseJsonOf(next.draft) !== houseJsonOf(before.draft)) writeNow(next.draft);
  };
  const anew = () => {
    const fresh = begunAnew(zoneOfComputer());
    if (preview === null) setBegun(fresh);
    else look(fresh, preview);
  };

  useEffect(begin, [stored]);
  useEffect(() => {
    if (broughtHouse === null) return;
    const draft = draftOf(broughtHouse.text);
    setBegun(draft && begunWith(draft));
  }, [broughtHouse]);
  useEffect(() => {
    if (preview !== null && begun !== null) look(begun, preview);
  }, [preview]);

  const change = (draft: HouseDraft) => {
    if (begun === null) return;
    const moved = (['latitude', 'longitude', 'timeZone'] as const).some(
      (it) => draft[it] !== begun.draft[it],
    );
    setBegun({ ...begun, draft, placeGuessed: begun.placeGuessed && !moved });
    setWaiting(true);
    clearTimeout(pause.current);
    pause.current = setTimeout(() => {
      setWaiting(false);
      if (latest.current !== null) writeNow(latest.current.draft);
    }, PAUSE);
  };
  return { begun, waiting, change, anew, begin };
}

/** As much of a house as reading its files depends on: names and sizes show nothing new. */
const asRead = (draft: HouseDraft) =>
  houseJsonOf({
    ...draft,
    name: '',
    floorArea: '',
    volume: '',
    placements: draft.placements.map((placement) => ({ ...placement, room: '', volume: '', element: '' })),
  });

const zoneOfComputer = () => Intl.DateTimeFormat().resolvedOptions().timeZone;
