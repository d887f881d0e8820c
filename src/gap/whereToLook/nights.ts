/** The used nights of a stage, with how the wind blew in their windows. */
import type { CoolingWindow, StageNights } from '../../cooling/index.ts';
import type { HouseRecord } from '../../series/record.ts';

export interface UsedNight {
  readonly window: CoolingWindow;
  /** Of the house [s]. */
  readonly timeConstant: number;
  /** Inside less what drives the fall [K]. */
  readonly drivingDifference: number;
  /** Mean over the window [m/s]; null where it was not logged for most of it. */
  readonly wind: number | null;
}

/** Share of a window's cells that must be known. */
const MOST = 0.9;

export const usedNights = ({ nights }: StageNights, { windSpeed }: HouseRecord): UsedNight[] =>
  nights.flatMap(({ used, window, fit, drivingDifference }) =>
    used && window !== null && fit?.kind === 'fitted' && drivingDifference !== null
      ? [
          {
            window,
            timeConstant: fit.timeConstant.value,
            drivingDifference,
            wind: windSpeed && meanOver(window, (i) => windSpeed[i]),
          },
        ]
      : [],
  );

/** The mean of what is known of a window; null where that is too little of it. */
export function meanOver({ first, last }: CoolingWindow, value: (cell: number) => number): number | null {
  let [sum, known] = [0, 0];
  for (let i = first; i <= last; i++) {
    const it = value(i);
    if (Number.isNaN(it)) continue;
    sum += it;
    known++;
  }
  return known < MOST * (last - first + 1) ? null : sum / known;
}

/** What one logger alone may be off, where the inside ones and those outdoors are alike; one sd [K]. */
export function loggerSd({ rooms, differenceSd }: HouseRecord): number {
  const inside = Math.max(1, rooms.filter(({ place }) => place === 'inside').length);
  const outside = Math.max(1, rooms.filter(({ place }) => place === 'outside').length);
  return differenceSd / Math.sqrt(1 / inside + 1 / outside);
}
