import { describe, expect, test } from 'vitest';
import {
  type JudgedNight,
  judgeNights,
  laterStarts,
  leaveOneNightOut,
  notesOnNights,
  poolTimeConstants,
  roomsCooling,
} from '../../src/cooling/index.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { HOUR, midnight, nightsOf, recordOf } from './nightsAtHand.ts';

const days = 8;
const judged = (record: HouseRecord) => judgeNights(record, nightsOf(record));
const hourOf = (t: number) => ((t - midnight) / HOUR) % 24;
/** Hours since 20:00, when the heating goes off; below 0 by day. */
const sinceOff = (t: number) => {
  const hour = hourOf(t);
  return hour >= 20 ? hour - 20 : hour < 7 ? hour + 4 : -1;
};

describe('one night left out in turn', () => {
  /** Nights of given time constants, with the small errors of smooth curves. */
  const nightsLike = (hours: readonly number[]): JudgedNight[] => {
    const [night] = judged(recordOf());
    return hours.map((it, k): JudgedNight => {
      if (night.fit?.kind !== 'fitted') throw new Error('the night at hand is fitted');
      const timeConstant = { value: it * HOUR, low: it * HOUR, high: it * HOUR };
      const date = `2027-01-${10 + k}`;
      return { ...night, night: { ...night.night, date }, fit: { ...night.fit, timeConstant, logSe: 0.02 } };
    });
  };
  const outOf = (hours: readonly number[]) => {
    const nights = nightsLike(hours);
    return leaveOneNightOut(nights, poolTimeConstants(nights, 0));
  };

  test('finds the night that stands apart, and by how much it moves the rest', () => {
    const out = outOf([40, 41, 39, 40, 60, 40]);
    expect(out?.most.date).toBe('2027-01-14');
    // The others are pooled on the logarithm with equal weights: exp(mean of ln).
    expect((out?.most.timeConstant ?? 0) / HOUR).toBeCloseTo((40 * 41 * 39 * 40 * 40) ** (1 / 5), 2);
    expect(out?.without).toHaveLength(6);
  });

  test('no night carries the figure when all agree about as well', () => {
    expect(outOf([40, 41, 39, 40.5, 39.5, 40.2, 40.8, 39.2])?.carries).toBe(false);
  });

  test('two nights are too few to leave one out', () => expect(outOf([40, 41])).toBeNull());
});

describe('windows begun up to three hours later', () => {
  test('give the same time constant in a room that is one reservoir', () => {
    const record = recordOf({ days });
    const starts = laterStarts(record, judged(record));
    expect(starts?.starts.map(({ later }) => later / HOUR)).toEqual([0, 1, 2, 3]);
    for (const { timeConstant } of starts?.starts ?? []) expect(timeConstant / HOUR).toBeCloseTo(40, 2);
    expect(starts?.moves).toBe(false);
  });

  /** A second reservoir that has all left within a few hours: 2.5 K at 20:00, with a time constant of 3 h. */
  const deep = (t: number, it: number) =>
    sinceOff(t) < 0 ? it : it - 2.5 * (1 - Math.exp(-sinceOff(t) / 3));

  test('give longer ones where mass cools after the air, and it is said', () => {
    const record = recordOf({ days, inside: deep });
    const nights = judged(record);
    const starts = laterStarts(record, nights);
    const hours = starts?.starts.map(({ timeConstant }) => timeConstant / HOUR) ?? [];
    expect(hours).toEqual(hours.toSorted((a, b) => a - b));
    expect(starts?.moves).toBe(true);
    const notes = notesOnNights(null, starts, roomsCooling(record, nights));
    expect(notes.map(({ code }) => code)).toEqual(['time-constant-moves']);
  });

  test('stop where fewer than three hours would remain', () => {
    const late = (t: number, it: number) => (hourOf(t) >= 12 || hourOf(t) < 0.5 ? 20 : it - 0.3);
    const record = recordOf({ days, inside: late });
    const starts = laterStarts(record, judged(record));
    expect(starts?.starts.map(({ later }) => later / HOUR)).toEqual([0, 1]);
  });
});

describe('rooms', () => {
  const roomOf = (room: string, timeConstant: number) =>
    ({
      room,
      place: 'inside',
      temperature: (t: number) => (sinceOff(t) < 0 ? 20 : 5 + 15 * Math.exp(-sinceOff(t) / timeConstant)),
    }) as const;

  test('each have their time constant, over the nights that the house has', () => {
    const record = recordOf({ days, rooms: [roomOf('Loft', 25), roomOf('Kitchen', 45)] });
    const { rooms, fastest } = roomsCooling(record, judged(record));
    expect(rooms.map(({ timeConstant }) => timeConstant.value / HOUR)).toEqual([
      expect.closeTo(25, 2),
      expect.closeTo(45, 2),
    ]);
    expect(fastest?.room).toBe('Loft');
    expect(fastest?.ratio.value).toBeCloseTo(25 / 40, 3);
  });

  test('that cool alike are not told apart, nor beyond what their loggers may be off', () => {
    const record = recordOf({ days, rooms: [roomOf('Loft', 39), roomOf('Kitchen', 41)] });
    const nights = judged(record);
    expect(roomsCooling({ ...record, differenceSd: 0.3 }, nights).fastest).toBeNull();
  });

  test('outside, in a void or next door are not rooms of the house', () => {
    const rooms = [
      { ...roomOf('Roof void', 10), place: 'void' as const },
      { ...roomOf('Next door', 10), place: 'adjacent' as const },
    ];
    const record = recordOf({ days, rooms });
    expect(roomsCooling(record, judged(record)).rooms).toEqual([]);
  });
});
