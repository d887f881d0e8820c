/** What is to be said of a stage's nights together: codes and figures; the sentences are in `words/`. */
import type { LaterStarts } from './laterStarts.ts';
import type { LeaveOneOut } from './leaveOneOut.ts';
import type { RoomsCooling } from './rooms.ts';

export type NightsNote =
  /** From the first start to the last [s]. */
  | {
      readonly code: 'time-constant-moves';
      readonly from: number;
      readonly to: number;
      readonly later: number;
      readonly nights: number;
    }
  /** The pooled time constant with all nights and without this one [s]. */
  | {
      readonly code: 'one-night-carries';
      readonly date: string;
      readonly withAll: number;
      readonly without: number;
    }
  /** Its time constant over the house's [–]. */
  | {
      readonly code: 'room-cools-fastest';
      readonly room: string;
      readonly ratio: number;
      readonly low: number;
      readonly high: number;
    };

export function notesOnNights(
  oneOut: LeaveOneOut | null,
  starts: LaterStarts | null,
  { fastest }: RoomsCooling,
): NightsNote[] {
  const notes: NightsNote[] = [];
  if (starts?.moves) {
    const [first, last] = [starts.starts[0], starts.starts[starts.starts.length - 1]];
    const { later } = last;
    notes.push({
      code: 'time-constant-moves',
      from: first.timeConstant,
      to: last.timeConstant,
      later,
      nights: starts.nights,
    });
  }
  if (oneOut?.carries) {
    const { date, timeConstant, ratio } = oneOut.most;
    notes.push({
      code: 'one-night-carries',
      date,
      withAll: timeConstant / ratio,
      without: timeConstant,
    });
  }
  if (fastest !== null) {
    const { value, low, high } = fastest.ratio;
    notes.push({ code: 'room-cools-fastest', room: fastest.room, ratio: value, low, high });
  }
  return notes;
}
