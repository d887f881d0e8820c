/** A stored house as the list of houses shows it. */
import { isoWithOffset } from '../../src/sky/zone.ts';
import type { Services } from '../services.ts';
import type { StoredHouse } from '../store/reading.ts';
import type { HouseSummary } from './shapes.ts';

export function summaryOf(house: StoredHouse, { assessments, reading }: Services): HouseSummary {
  const { id, name, invented, away, lastReading, timeZone, outcome } = house;
  const keepUntil = reading.keepUntil(id);
  return {
    id,
    name,
    invented,
    away,
    lastReading: lastReading === null ? null : isoWithOffset(lastReading, timeZone),
    ...(keepUntil === null ? {} : { keepUntil }),
    state: assessments.stateOf(house),
    answer: outcome === null || outcome.answer === null ? null : JSON.parse(outcome.answer),
  };
}
