/** The year and the cold day that a place is set beside. */
import { type DegreeDays, type DesignDay, standardYear } from '../fabric/index.ts';
import type { House } from '../house.ts';

/** The only place whose degree days are known here is the United Kingdom, by its clock. */
const BRITISH_ZONES = ['Europe/London', 'Europe/Belfast', 'GB'];
/** Usual of the air inside, and of a cold day over most of the country [°C]. PRACTICE. */
const britishDay: DesignDay = { insideTemperature: 20, outsideTemperature: -3 };

export interface Climate {
  readonly year: DegreeDays;
  readonly day: DesignDay;
}

/** Null where no degree days of the place are known; no climate is guessed from the latitude. */
export function climateOf({ location }: Pick<House, 'location'>): Climate | null {
  return BRITISH_ZONES.includes(location.timeZone) ? { year: standardYear, day: britishDay } : null;
}
