/** The runs of one case as a table: medians, and the ratios of ours (the first) to the others. */
import { median } from 'simple-statistics';

export interface Run {
  readonly seconds: number;
  /** Of all threads; it tells a crowded machine from slow work. */
  readonly processorSeconds: number;
  readonly peakMB: number;
  readonly account: string;
}

export function table(unit: string, units: number, runs: ReadonlyMap<string, readonly Run[]>): string {
  const of = (key: 'seconds' | 'processorSeconds' | 'peakMB') =>
    [...runs.values()].map((them) => median(them.map((run) => run[key])));
  const seconds = of('seconds');
  const processor = of('processorSeconds');
  const peak = of('peakMB');
  const rows = [...runs].map(([name, them], i) => [
    name,
    significant(units / seconds[i] / 1e6),
    i === 0 ? '' : significant(seconds[i] / seconds[0]),
    significant(processor[i]),
    i === 0 ? '' : significant(processor[i] / processor[0]),
    peak[i].toFixed(0),
    i === 0 ? '' : significant(peak[i] / peak[0]),
    [...new Set(them.map(({ account }) => account))].join(' / '),
  ]);
  const head = [
    '',
    `M ${unit}/s`,
    'ours is faster by',
    'processor s',
    'ours needs less by',
    'peak MB',
    'ours is smaller by',
    'made',
  ];
  return aligned([head, ...rows]);
}

const significant = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(2));

function aligned(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const pad = (cell: string, column: number) =>
    column === 0 || column === widths.length - 1
      ? cell.padEnd(widths[column])
      : cell.padStart(widths[column]);
  return rows.map((row) => row.map(pad).join('  ').trimEnd()).join('\n');
}
