/** What is to be said of a stage's nights, and of how stages and decisions lie in the record. */
import type { JudgedNight, StageNights } from '../cooling/index.ts';
import type { House, StageEntry } from '../house.ts';
import { timeAt } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { StageNote } from './stageNotes.ts';

/** @param finished nothing is missing from the stage */
export function notesOn(
  stage: StageNights,
  used: readonly JudgedNight[],
  finished: boolean,
  { grid }: HouseRecord,
): StageNote[] {
  const handPicked = stage.nights.filter(({ reasons }) =>
    reasons.some(({ code }) => code.endsWith('by-hand')),
  );
  const outside = stage.to < grid.start || stage.from > timeAt(grid, grid.length - 1);
  const notes: (StageNote | null)[] = [
    outside ? { code: 'stage-outside-record' } : null,
    !outside && stage.nights.length === 0 ? { code: 'no-night-in-stage' } : null,
    used.length < 2 ? { code: 'too-few-nights', used: used.length } : null,
    stage.crossing.length > 0 ? { code: 'night-crosses-stage', dates: stage.crossing } : null,
    handPicked.length > 0 ? { code: 'hand-picked', dates: handPicked.map(({ night }) => night.date) } : null,
    finished ? null : { code: 'stage-not-complete', missing: stage.missing },
  ];
  return notes.filter((note) => note !== null);
}

/** Without its volume or floor area the network that gives the heat loss cannot be built, whatever else is known. */
export function sizeUnknown(house: House, heatLossAsDrawn: number | null): StageNote[] {
  const { floorAreaM2, volumeM3, conditions } = house;
  if (heatLossAsDrawn === null || floorAreaM2 !== undefined || volumeM3 !== undefined) return [];
  // No heat loss is given then in any case, and that is said.
  if (conditions?.openToNeighbour) return [];
  return [{ code: 'size-unknown', where: { key: 'floorAreaM2' } }];
}

/** Decisions taken by hand on nights that the record does not have. */
export function unknownNights(house: House, nights: readonly JudgedNight[]): StageNote[] {
  const dates = new Set(nights.map(({ night }) => night.date));
  return (house.nights ?? []).flatMap(({ date }, i) =>
    dates.has(date) ? [] : [{ code: 'no-such-night', date, where: { key: `nights[${i}]` } } as const],
  );
}

export function overlaps(stages: readonly StageEntry[]): StageNote[] {
  return stages
    .slice(1)
    .flatMap((stage, i) =>
      stage.from < stages[i].to
        ? [{ code: 'stages-overlap', names: [stages[i].name, stage.name] } as const]
        : [],
    );
}
