/** Metered heat from whatever was logged or read off by eye -> power on the grid. */
import type { HeatEntry } from '../house.ts';
import type { LogChannel, LogFinding } from '../logs/index.ts';
import { type Grid, indexAt } from '../series/grid.ts';
import { meterPower } from '../series/meterPower.ts';
import { resampleIntervalMeans } from '../series/resample.ts';
import { spacingOf } from '../series/steps.ts';
import { instantOf } from '../sky/zone.ts';
import type { RecordFinding } from './finding.ts';

/** A power log is read by instruments good to about 2 %; a stated figure says its own. */
const METER_SD = 0.02;
const LONGEST_STEP = 2 * 3600; // [s]
/** Readings further apart than this many usual intervals have lost some between them. */
const LOST = 1.5;

/**
 * The sum of all metered heat [W], each entry times the part that warms the house. A cell is NaN where no log covers
 * it; a spell read off by eye is known only while it lasts.
 */
export function heatingPowerOf(
  heat: readonly { readonly entry: HeatEntry; readonly channel: LogChannel | null }[],
  grid: Grid,
  timeZone: string,
  findings: (RecordFinding | LogFinding)[],
): { heatingPower: Float64Array | null; heatingPowerSd: number } {
  if (heat.length === 0) return { heatingPower: null, heatingPowerSd: 0 };
  const series = heat.map(({ entry, channel }) => {
    const power =
      channel === null ? statedPower(entry, grid, timeZone) : loggedPower(entry, channel, grid, findings);
    if (channel !== null && power.every(Number.isNaN))
      findings.push({ code: 'heat-not-usable', where: { file: entry.file ?? '', column: channel.column } });
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

function loggedPower(
  entry: HeatEntry,
  channel: LogChannel,
  grid: Grid,
  findings: (RecordFinding | LogFinding)[],
): Float64Array {
  const stamp = entry.read?.stamp ?? 'end';
  const where = { file: entry.file ?? '', column: channel.column };
  if (channel.quantity === 'meter') {
    const { power, resets } = meterPower(channel.time, channel.value, grid, LONGEST_STEP);
    if (resets > 0) findings.push({ code: 'meter-ran-backwards', count: resets, where });
    return power;
  }
  if (channel.quantity === 'power')
    return resampleIntervalMeans(channel.time, channel.value, grid, LONGEST_STEP, stamp);
  const usual = spacingOf(channel.time);
  return resampleIntervalMeans(channel.time, powerOfEnergies(channel, usual), grid, LOST * usual, stamp);
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
