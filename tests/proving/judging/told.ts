/** What is told of a simulated record, as the JSON has it. */
import { assessRecord } from '../../../src/assess.ts';
import { type Assessment, assessmentSchema, type StageResult } from '../../../src/assessment.ts';
import type { House } from '../../../src/house.ts';
import { reportOf } from '../../../src/report.ts';
import { timeAt } from '../../../src/series/grid.ts';
import type { HouseRecord } from '../../../src/series/record.ts';
import { provingRecords } from '../records/cache.ts';
import type { ProvingRecord, ProvingTier } from '../records/provingRecord.ts';
import { judgingSeeds } from './seeds.ts';

/** The record of a kind of house, of the first judging seed. */
export function proved(type: string, tier: ProvingTier): ProvingRecord {
  const found = provingRecords(type, judgingSeeds[0]).find((it) => it.tier === tier);
  if (found === undefined) throw new Error(`no record of ${type}: ${tier}`);
  return found;
}

/**
 * As the JSON has it.
 *
 * @throws Error when a figure is no number: JSON would have null there without anybody having said so
 */
export function told(house: House, record: HouseRecord): Assessment {
  const assessment = reportOf({ house, accounts: [], record, ...assessRecord(house, record) });
  const odd = notFinite(assessment);
  if (odd.length > 0) throw new Error(`no number: ${odd.join(', ')}`);
  return assessmentSchema.parse(assessment);
}

export function lastOf({ stages }: Assessment): StageResult {
  const last = stages.at(-1);
  if (last === undefined) throw new Error('no stage');
  return last;
}

/** Where in a value a figure is NaN or infinite. */
export function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, it]) => notFinite(it, `${path}.${key}`));
}

/** The cells of a record from one up to and with another. */
export function cutRecord(record: HouseRecord, first: number, last: number): HouseRecord {
  const cut = (values: Float64Array) => values.slice(first, last + 1);
  const { grid, rooms, insideTemperature, outsideTemperature, windSpeed, irradiance, heatingPower } = record;
  return {
    ...record,
    grid: { ...grid, start: timeAt(grid, first), length: last + 1 - first },
    rooms: rooms.map((room) => ({
      ...room,
      temperature: cut(room.temperature),
      relativeHumidity: room.relativeHumidity && cut(room.relativeHumidity),
    })),
    insideTemperature: cut(insideTemperature),
    outsideTemperature: cut(outsideTemperature),
    windSpeed: windSpeed && cut(windSpeed),
    irradiance: irradiance && cut(irradiance),
    heatingPower: heatingPower && cut(heatingPower),
  };
}
