/** From one run the records of every tier. */

import type { HeatEntry, House } from '../../../src/house.ts';
import { type Grid, gridOver, indexAt } from '../../../src/series/grid.ts';
import type { HouseRecord } from '../../../src/series/record.ts';
import { asDrawn, type Deviations } from '../plan.ts';
import { heatLoss, nightLeakage, wholeDayLeakage } from '../truth.ts';
import type { MeteredHeat, Span } from '../use.ts';
import { day, days } from './calendar.ts';
import { drawnHouse } from './drawnHouse.ts';
import { drawsOf } from './draws.ts';
import type { HouseRun } from './houseRun.ts';
import { loggersOf, meteredPower, type Seen, seenBy, stationOf } from './logged.ts';
import type { ProvingTier, StageTruth, Strays } from './provingRecord.ts';

/** A record before the figures that hang on the code of `src/fabric`, so that it may be kept on disk. */
export interface RawRecord {
  readonly tier: ProvingTier;
  readonly type: string;
  readonly seed: number;
  readonly ownSeed: number;
  /** With layers, whatever the tier. */
  readonly house: House;
  readonly record: HouseRecord;
  readonly noiseFree: HouseRecord;
  readonly stages: readonly StageTruth[];
  readonly strays: Strays;
}

const unmetered = { heatingPower: null, heatingPowerSd: 0 };
const meterSd = 0.02; // as `record/heat.ts` takes a meter to be

export function rawRecords(house: HouseRun): RawRecord[] {
  const { start, course, ownSeed, type, seed, run } = house;
  const draws = drawsOf(ownSeed, 'what is known');
  const loggers = loggersOf(house);
  const drawn = drawnHouse(house, loggers);
  const strays = straysOf(house);
  const told = (gains: number) => Math.max(0, Math.round(gains * (1 + 0.4 * draws.source.normal())));
  const gains = told(course.constantGains);
  const withPeople = gains + told(course.nightPeople);
  const at = (count: number) => start + count * day;
  const records: RawRecord[] = [];

  const add = (
    tier: ProvingTier,
    own: Partial<House>,
    both: ReturnType<typeof seenBy>,
    rest: Omit<HouseRecord, keyof Seen>,
    stages: readonly StageTruth[],
  ) =>
    records.push({
      tier,
      type: type.name,
      seed,
      ownSeed,
      house: { ...drawn, ...own },
      record: { ...both.seen, ...rest },
      noiseFree: { ...both.noiseFree, ...rest },
      stages,
      strays,
    });
  const weatherOf = (grid: Grid, windShare: number, sunShare: number) => {
    const { windSpeed, irradiance } = stationOf(house, grid);
    return {
      windSpeed: draws.chance(windShare) ? windSpeed : null,
      irradiance: draws.chance(sunShare) ? irradiance : null,
    };
  };

  const afterGrid = gridOver(at(days.after.from + 0.5), at(days.after.to + 0.5));
  const afterSeen = seenBy(loggers, house, afterGrid);
  const afterTruth = stageTruth(house, 'Whole record', house.after, nightsOf(house, days.after));
  const quiet = { ...unmetered, ...weatherOf(afterGrid, 0.5, 0.4) };
  const people = { constantGainsW: withPeople };
  add('loggers, layers known', people, afterSeen, quiet, [afterTruth]);
  add('loggers, U-values and a capacity figure', people, afterSeen, quiet, [afterTruth]);

  const { heatedNight } = course;
  const heater = meteredPower(house, afterGrid, (k) => run.metered[k]);
  const byEye = draws.chance(0.5);
  const known = byEye ? readByEye(afterGrid, heatedNight) : heater;
  add(
    'one heated night',
    { constantGainsW: gains, heat: [heatEntry(house, heatedNight, byEye)] },
    afterSeen,
    { heatingPower: known, heatingPowerSd: meterSd, ...weatherOf(afterGrid, 0.5, 0.4) },
    [afterTruth],
  );

  const { from, to } = course.meteredDays;
  const meteredGrid = gridOver(from, to);
  const meteredSeen = seenBy(loggers, house, meteredGrid);
  const all = meteredPower(house, meteredGrid, (k) => run.heating[k] + run.metered[k]);
  const heating = { heatingPower: all, heatingPowerSd: meterSd };
  const meteredTruth = stageTruth(
    house,
    'Whole record',
    house.after,
    wholeDayLeakage(run, course.meteredDays),
  );
  const constant = { constantGainsW: gains, heat: [{ file: 'heaters.csv', kind: 'power' as const }] };
  const sunny = weatherOf(meteredGrid, 0.5, 1);
  add('metered days, irradiance', constant, meteredSeen, { ...heating, ...sunny }, [meteredTruth]);
  add('metered days, no irradiance', constant, meteredSeen, { ...heating, ...sunny, irradiance: null }, [
    meteredTruth,
  ]);

  const bothGrid = gridOver(at(days.before.from + 0.5), at(days.after.to + 0.5));
  const stages = [
    { name: 'Before', ...datesOf(house, days.before), complete: false },
    { name: 'After', ...datesOf(house, days.after) },
  ];
  add(
    'before and after',
    { ...people, stages },
    seenBy(loggers, house, bothGrid),
    { ...unmetered, ...weatherOf(bothGrid, 0.5, 0.4) },
    [
      stageTruth(house, 'Before', house.before, nightsOf(house, days.before)),
      stageTruth(house, 'After', house.after, nightsOf(house, days.after)),
    ],
  );
  return records;
}

const nightsOf = ({ run, start, site }: HouseRun, { from, to }: Span) =>
  nightLeakage(run, { from: start + (from + 0.5) * day, to: start + (to + 0.5) * day }, site.fromUtc);

function stageTruth({ plan }: HouseRun, name: string, built: Deviations, changes: number): StageTruth {
  const { whole, fabric, bridges, leakage } = heatLoss(plan, built, changes);
  return { name, heatLossCoefficient: whole, fabric: fabric + bridges, leakage };
}

/** Dates select nights by their evening. */
function datesOf({ start, site }: HouseRun, { from, to }: Span) {
  const date = (count: number) =>
    new Date((start + site.fromUtc * 3600 + count * day) * 1000).toISOString().slice(0, 10);
  return { from: date(from), to: date(to) };
}

/** As `record/heat.ts` lays a spell on the grid that was read off a plug meter: known while it lasts. */
const readByEye = (grid: Grid, { from, to, power }: MeteredHeat) =>
  new Float64Array(grid.length).fill(Number.NaN).fill(power, indexAt(grid, from), indexAt(grid, to));

/** A stub where it names a file: the record carries the power already. */
function heatEntry({ site }: HouseRun, { from, to, power }: MeteredHeat, byEye: boolean): HeatEntry {
  const local = (time: number) => new Date((time + site.fromUtc * 3600) * 1000).toISOString().slice(0, 16);
  return byEye ? { from: local(from), to: local(to), powerW: power } : { file: 'heater.csv', kind: 'power' };
}

function straysOf(house: HouseRun): Strays {
  const { plan, after, type } = house;
  const shell = (built: Deviations) => heatLoss(plan, built, 0).whole;
  return {
    fabric: shell(after) / shell(asDrawn),
    mass: after.mass,
    leakage: nightsOf(house, days.after) / type.drawnAirChanges.tested,
  };
}
