/** The runs of one case as a table: medians, and the ratios of ours (the first) to the others. */
import { median, quantile } from 'simple-statistics';

export interface Run {
  readonly seconds: number;
  /** Of all threads; it tells a crowded machine from slow work. */
  readonly processorSeconds: number;
  readonly peakMB: number;
  readonly account: string;
  /** Of each of many answers [s]. */
  readonly waits: readonly number[] | null;
}

export function table(unit: string, units: number, runs: ReadonlyMap<string, readonly Run[]>): string {
  const of = (key: 'seconds' | 'processorSeconds' | 'peakMB') =>
    [...runs.values()].map((them) => median(them.map((run) => run[key])));
  const seconds = of('seconds');
  const processor = of('processorSeconds');
  const peak = of('peakMB');
  const late = [...runs.values()].map((them) => latest(them.flatMap(({ waits }) => waits ?? [])));
  const scale = units >= 1e5 ? { per: 1e6, sign: 'M ' } : { per: 1, sign: '' };
  const rows = [...runs].map(([name, them], i) => [
    name,
    significant(units / seconds[i] / scale.per),
    i === 0 ? '' : significant(seconds[i] / seconds[0]),
    ...(late[0] === null
      ? []
      : [significant(1000 * (late[i] ?? 0)), i === 0 ? '' : significant((late[i] ?? 0) / late[0])]),
    significant(processor[i]),
    i === 0 ? '' : significant(processor[i] / processor[0]),
    peak[i].toFixed(0),
    i === 0 ? '' : significant(peak[i] / peak[0]),
    [...new Set(them.map(({ account }) => account))].join(' / '),
  ]);
  const head = [
    '',
    `${scale.sign}${unit}/s`,
    'ours is faster by',
    ...(late[0] === null ? [] : ['p95 ms', 'ours is sooner by']),
    'processor s',
    'ours needs less by',
    'peak MB',
    'ours is smaller by',
    'made',
  ];
  return aligned([head, ...rows]);
}

/** Their 95th percentile; null without any. */
const latest = (waits: readonly number[]) => (waits.length === 0 ? null : quantile([...waits], 0.95));

const significant = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(2));

function aligned(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const pad = (cell: string, column: number) =>
    column === 0 || column === widths.length - 1
      ? cell.padEnd(widths[column])
      : cell.padStart(widths[column]);
  return rows.map((row) => row.map(pad).join('  ').trimEnd()).join('\n');
}
