/** The day that it is where the house stands, "2027-02-14". */
import { isoWithOffset } from '../../src/sky/zone.ts';

export const today = (timeZone: string, now: Date): string =>
  isoWithOffset(now.getTime() / 1000, timeZone).slice(0, 10);
