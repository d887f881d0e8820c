/** A night as a few lines of text: inside, the fit, and outside. */
import type { Evidence } from '../../src/assess.ts';
import type { JudgedNight } from '../../src/cooling/index.ts';
import { indexAt, timeAt } from '../../src/series/grid.ts';

const WIDTH = 64;
const HEIGHT = 12;

/** Inside `o`, fit `-`, outside `.`; a scale in °C at the left, clock times below. */
export function nightPlot({ record, house }: Evidence, { night, window, fit }: JudgedNight): string {
  const { grid } = record;
  const first = Math.max(0, indexAt(grid, night.sunset));
  const last = Math.min(grid.length - 1, indexAt(grid, night.sunrise));
  const curve = new Float64Array(grid.length).fill(Number.NaN);
  if (window !== null && fit?.kind === 'fitted') curve.set(fit.curve, window.first);
  const marks: readonly (readonly [Float64Array, string])[] = [
    [record.outsideTemperature, '.'],
    [curve, '-'],
    [record.insideTemperature, 'o'],
  ];
  const shown = marks.flatMap(([series]) =>
    Array.from(series.subarray(first, last + 1)).filter((v) => !Number.isNaN(v)),
  );
  if (shown.length === 0) return '';
  const low = Math.floor(Math.min(...shown));
  const high = Math.max(low + 1, Math.ceil(Math.max(...shown)));
  const rows = Array.from({ length: HEIGHT }, () => Array<string>(WIDTH).fill(' '));
  for (const [series, mark] of marks)
    for (let x = 0; x < WIDTH; x++) {
      const value = series[first + Math.round((x * (last - first)) / (WIDTH - 1))];
      if (!Number.isNaN(value)) rows[Math.round(((high - value) / (high - low)) * (HEIGHT - 1))][x] = mark;
    }
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone: house.location.timeZone, timeStyle: 'short' });
  const at = (index: number) => clock.format(timeAt(grid, index) * 1000);
  const scale = (y: number) => (y === 0 ? high : y === HEIGHT - 1 ? low : null);
  return [
    ...rows.map((row, y) => `${(scale(y)?.toString() ?? '').padStart(4)} |${row.join('').trimEnd()}`),
    `  °C +${'-'.repeat(WIDTH)}`,
    `      ${at(first)}${' '.repeat(WIDTH - 10)}${at(last)}`,
    '      o inside   - fitted   . outside',
  ].join('\n');
}
