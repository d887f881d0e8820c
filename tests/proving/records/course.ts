/** What people do in one run: site days or occupied evenings, one heated night, a spell of metered days. */
import { sunPosition } from '../sun.ts';
import { type Heating, type MeteredHeat, type Span, siteDays, type Use, without } from '../use.ts';
import { day, days, hour } from './calendar.ts';
import { type Draws, drawsOf } from './draws.ts';
import type { Site } from './sites.ts';

export interface Course {
  readonly use: Use;
  readonly heatedNight: MeteredHeat;
  /** Whole days in which all heat is metered. */
  readonly meteredDays: Span;
  /** What is there all the time [W]; and what people give off besides in a night, on average. */
  readonly constantGains: number;
  readonly nightPeople: number;
  /** Two weeks before the first stage to the end [s]. */
  readonly until: number;
}

/** The house as far as its use hangs on it. */
export interface Served {
  /** [W/K] */
  readonly drawnHeatLoss: number;
  readonly floorArea: number;
  /** Share of the volume, by zone; 0 for a roof void. */
  readonly shares: readonly number[];
}

export function courseOf(served: Served, site: Site, start: number, seed: number): Course {
  const draws = drawsOf(seed, 'course');
  const occupied = draws.chance(0.35);
  const metered = {
    from: start + days.metered * day,
    to: start + (days.metered + 8 + Math.floor(draws.between(0, 5))) * day,
  };
  const alone: Span[] = [
    ...heatedDay(draws, start),
    { from: start + days.thermostat * day, to: metered.to + day },
  ];
  const [{ from: morning }] = alone;
  const heatedNight = heaterOf(draws, served, site, morning);
  const constantGains = draws.between(0.2, 1.2) * Math.min(120, 30 + served.floorArea);
  const { awake, asleep } = occupied ? evenings(draws, served, start, alone) : { awake: [], asleep: [] };
  const nightPeople = asleep.reduce((sum, { power }) => sum + power, 0) / Math.max(1, asleep.length);
  const total = Math.max(1500, served.drawnHeatLoss * draws.between(35, 70));
  const { heating, working } = occupied
    ? { heating: without(eveningHeating(draws, start), alone), working: [] }
    : siteDays(seed, start, days.thermostat, alone);
  return {
    use: {
      heating: [...heating, ...kept(draws, start, metered)],
      setTemperature: draws.between(18, 22),
      band: draws.between(0.3, 1),
      heatingPower: served.shares.map((share) => total * share),
      turnedAbove: draws.chance(0.4) ? 0.6 : 0,
      metered: [{ ...heatedNight }],
      constantGains: served.shares.map((share) => constantGains * share),
      people: [...awake, ...asleep],
      working,
      workingLeakage: draws.between(1.2, 2.2),
    },
    heatedNight,
    meteredDays: metered,
    constantGains,
    nightPeople,
    until: metered.to + hour,
  };
}

/** From the morning of one day in the middle of the last stage to the next morning nobody heats. */
function heatedDay(draws: Draws, start: number): Span[] {
  const from = start + (days.after.from + 4 + Math.floor(draws.between(0, 7))) * day + 9 * hour;
  return [{ from, to: from + 23.5 * hour }];
}

/** About 0.8 to 1.3 of what keeps the house 20 K above outdoors, as far as portable heaters go. */
function heaterOf(draws: Draws, { drawnHeatLoss, shares }: Served, site: Site, morning: number): MeteredHeat {
  const dusk = sunsetAfter(morning, site);
  const from = Math.round((dusk + draws.between(-0.3, 0.8) * hour) / 600) * 600;
  const duration = Math.round(draws.between(4, 8) * 6) * 600;
  const wanted = drawnHeatLoss * 20 * draws.between(0.8, 1.3);
  const power = Math.min(4000, Math.max(1000, Math.round(wanted / 250) * 250));
  return { from, to: from + duration, power, shares };
}

function sunsetAfter(time: number, { latitude, longitude }: Site): number {
  let at = time + 3 * hour; // from midday
  while (sunPosition(at, latitude, longitude).altitude > -0.0145) at += 60;
  return at;
}

/** Kept warm through the metered days; one in three turns down at night. */
function kept(draws: Draws, start: number, metered: Span): Heating[] {
  const setTemperature = draws.between(18.5, 21.5);
  const from = start + days.thermostat * day;
  const to = metered.to + hour;
  if (!draws.chance(1 / 3)) return [{ from, to, setTemperature }];
  const spans: Heating[] = [];
  for (let midnight = from; midnight < to; midnight += day) {
    spans.push({ from: midnight, to: midnight + 6 * hour, setTemperature: setTemperature - 3 });
    spans.push({ from: midnight + 6 * hour, to: midnight + 22 * hour, setTemperature });
    spans.push({ from: midnight + 22 * hour, to: midnight + day, setTemperature: setTemperature - 3 });
  }
  return spans;
}

function eveningHeating(draws: Draws, start: number): Span[] {
  return Array.from({ length: days.thermostat }, (_, k) => start + k * day).flatMap((midnight) => {
    const at = (hours: number, deviation: number) =>
      midnight + Math.round(4 * (hours + deviation * draws.source.normal())) * (hour / 4);
    const morning = { from: at(6.5, 0.3), to: at(8.5, 0.4) };
    const evening = { from: at(16.5, 0.7), to: at(21.5, 0.5) };
    return draws.chance(0.6) ? [morning, evening] : [evening];
  });
}

/** People and what they switch on from the evening on, and their warmth while they sleep. */
function evenings(draws: Draws, { shares }: Served, start: number, alone: readonly Span[]) {
  const awake: MeteredHeat[] = [];
  const asleep: MeteredHeat[] = [];
  for (let k = 0; k < days.thermostat; k++) {
    const midnight = start + k * day;
    const people = Math.floor(draws.between(0, 4));
    const bedtime = midnight + 22.25 * hour;
    const power = 80 * people + draws.between(50, 400);
    awake.push({ from: midnight + 17 * hour, to: bedtime, power, shares });
    asleep.push({ from: bedtime, to: midnight + 31 * hour, power: 65 * people, shares });
  }
  const apart = ({ from, to }: Span) => alone.every((gone) => to <= gone.from || from >= gone.to);
  return { awake: awake.filter(apart), asleep: asleep.filter(apart) };
}
