/** Metered heat from whatever was logged or read off by eye -> power on the grid. */
import { median } from 'simple-statistics';
import type { HeatEntry, House } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { type Grid, indexAt, timeAt } from '../series/grid.ts';
import { meterPower } from '../series/meterPower.ts';
import { resampleIntervalMeans } from '../series/resample.ts';
import { spacingOf } from '../series/steps.ts';
import { instantOf } from '../sky/zone.ts';
import type { RecordFinding } from './finding.ts';
import { heatUnitDoubt, unitAnswered } from './heatUnit.ts';
import { channelOf, exportsOf, trusted } from './readings.ts';
import type { Shelf } from './shelf.ts';

/** A power log is read by instruments good to about 2 %; a stated figure says its own. */
const METER_SD = 0.02;
const LONGEST_STEP = 2 * 3600; // [s]
/** Readings further apart than this many usual intervals have lost some between them. */
const LOST = 1.5;
const DAY = 86_400; // [s]
/** A log of fewer days is one of a heated night and need not be as long as the record. */
const DAYS_LOGGED = 3;

/** An entry of the house with its readings; no channel for a spell read off by eye. */
export interface HeatReadings {
  readonly entry: HeatEntry;
  readonly channel: LogChannel | null;
  /** The unit that the channel was read in, as people write it; null for one that the house alone knows. */
  readonly unit: string | null;
}

/** Every entry of the house's heat that can be read. */
export function heatReadings(
  house: House,
  shelf: Shelf,
  findings: (RecordFinding | LogFinding)[],
): HeatReadings[] {
  return (house.heat ?? []).flatMap((entry): HeatReadings[] => {
    if (entry.file === undefined) return [{ entry, channel: null, unit: null }];
    const exports = exportsOf(entry, shelf);
    const kind = entry.kind ?? 'power';
    const channel = channelOf(exports, kind, entry, findings);
    if (channel === null) {
      if (exports.length > 0) findings.push({ code: 'no-heat-in-file', kind, where: { file: entry.file } });
      return [];
    }
    const columns = exports.flatMap(({ understood }) => understood.columns);
    const unit = columns.find(({ column }) => column === channel.column)?.unit ?? null;
    return [{ entry, channel: trusted(channel), unit }];
  });
}

/**
 * The sum of all metered heat [W], each entry times the part that warms the house. A cell is NaN where no log covers
 * it; a spell read off by eye is known only while it lasts. A log whose unit cannot be right is not known at all.
 *
 * @param expected what the house loses in the cold [W]; null when nobody knows
 */
export function heatingPowerOf(
  heat: readonly HeatReadings[],
  grid: Grid,
  timeZone: string,
  expected: number | null,
  findings: (RecordFinding | LogFinding)[],
): { heatingPower: Float64Array | null; heatingPowerSd: number } {
  if (heat.length === 0) return { heatingPower: null, heatingPowerSd: 0 };
  const series = heat.map(({ entry, channel, unit }) => {
    if (channel === null) return statedPower(entry, grid, timeZone).map((p) => p * (entry.part ?? 1));
    const factor = unitAnswered(entry, unit);
    const power = loggedPower(entry, channel, grid, findings).map((p) => p * factor);
    const where = { file: entry.file ?? '', column: channel.column };
    if (power.every(Number.isNaN)) findings.push({ code: 'heat-not-usable', where });
    const doubt = heatUnitDoubt(power, entry, unit, expected);
    if (doubt !== null) {
      findings.push({ code: 'heat-unit-doubted', ...doubt, where });
      return power.fill(Number.NaN);
    }
    findings.push(...shorterThanRecord(channel, grid).map((it) => ({ ...it, where })));
    return power.map((p) => p * (entry.part ?? 1));
  });
  const logged = series.filter((_, k) => heat[k].channel !== null);
  const total = Float64Array.from({ length: grid.length }, (_, i) => {
    const known = series.map((it) => it[i]).filter((p) => !Number.isNaN(p));
    if (known.length === 0 || logged.some((it) => Number.isNaN(it[i]))) return Number.NaN;
    return known.reduce((sum, p) => sum + p, 0);
  });
  const sds = heat.map(({ entry }) =>
    entry.plusMinusPercent === undefined ? METER_SD : entry.plusMinusPercent / 100 / 1.96,
  );
  return { heatingPower: total, heatingPowerSd: Math.max(...sds) };
}

/** Of a log that begins a day or more after the record, or ends as long before it. */
function shorterThanRecord({ time }: LogChannel, grid: Grid) {
  const logged = { from: time[0], to: time[time.length - 1] };
  const record = { from: grid.start, to: timeAt(grid, grid.length - 1) };
  const without = Math.max(0, logged.from - record.from) + Math.max(0, record.to - logged.to);
  const short = logged.from - record.from > DAY || record.to - logged.to > DAY;
  return short && logged.to - logged.from >= DAYS_LOGGED * DAY && logged.to > record.from
    ? [{ code: 'heat-shorter-than-record' as const, without, of: record.to - record.from }]
    : [];
}

function loggedPower(
  entry: HeatEntry,
  channel: LogChannel,
  grid: Grid,
  findings: (RecordFinding | LogFinding)[],
): Float64Array {
  const stamp = entry.read?.stamp ?? 'end';
  const where = { file: entry.file ?? '', column: channel.column };
  if (channel.quantity === 'meter') {
    const { power, resets } = meterPower(channel.time, channel.value, grid, LONGEST_STEP, mostDrawn(channel));
    if (resets > 0) findings.push({ code: 'meter-ran-backwards', count: resets, where });
    return power;
  }
  if (channel.quantity === 'power')
    return resampleIntervalMeans(channel.time, channel.value, grid, LONGEST_STEP, stamp);
  const usual = spacingOf(channel.time);
  return resampleIntervalMeans(channel.time, powerOfEnergies(channel, usual), grid, LOST * usual, stamp);
}

/** Beyond what any house draws [W], and so many times what this one usually does, a step is another meter's reading. PRACTICE. */
const NO_HOUSE = 200e3;
const BEYOND_USUAL = 20;

function mostDrawn({ time, value }: LogChannel): number {
  const powers = value.subarray(1).map((it, i) => (it - value[i]) / (time[i + 1] - time[i]));
  const drawn = Array.from(powers.filter((it) => it > 0));
  return drawn.length === 0 ? NO_HOUSE : Math.max(NO_HOUSE, BEYOND_USUAL * median(drawn));
}

/** Energies per interval -> mean power over each; after a lost row an energy still belongs to one usual interval. */
function powerOfEnergies({ time, value }: LogChannel, usual: number): Float64Array {
  return value.map((energy, i) => {
    const spacing = i > 0 ? time[i] - time[i - 1] : usual;
    return energy / (spacing <= LOST * usual ? spacing : usual);
  });
}

function statedPower(entry: HeatEntry, grid: Grid, timeZone: string): Float64Array {
  const power = new Float64Array(grid.length).fill(Number.NaN);
  if (entry.from === undefined || entry.to === undefined) return power;
  const from = instantOf(entry.from, timeZone);
  const to = instantOf(entry.to, timeZone);
  const mean = entry.powerW ?? ((entry.energyKWh ?? 0) * 3.6e6) / (to - from);
  return power.fill(mean, Math.max(0, indexAt(grid, from)), Math.max(0, indexAt(grid, to)));
}
