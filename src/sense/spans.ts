/** Instants as `house.json` writes them. */
import { isoWithOffset } from '../sky/zone.ts';

/** "YYYY-MM-DDThh:mm" in the zone, to the minute. */
export const localText = (instant: number, timeZone: string) =>
  isoWithOffset(Math.round(instant / 60) * 60, timeZone).slice(0, 16);
