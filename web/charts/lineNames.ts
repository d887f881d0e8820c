/** The name of each line at its end, so that no eye has to go to a legend and back. */
import { inks } from './inks.ts';
import { canvasFont } from './plot.ts';
import { drawing, fitting } from './readingsMarks.ts';
import { columnsAt, type Family } from './readingsSeries.ts';
import type UPlot from './uplot.ts';

const APART = 14; // [px] between two names
const LEADER = 14; // [px] from the plot to a name
const NARROW = 560; // [px]

/** What is left free beside the plot [px]. */
export const roomForNames = (plot: UPlot) => (plot.width < NARROW ? 76 : 120);

/** With a stroke from the line's last value in view to its name: names that would stand on each other move apart. */
export const drawNames = (plot: UPlot, family: Family): void =>
  drawing(plot, (ctx, size) => {
    const { left, top, width, height } = plot.bbox;
    const ends = family.lines.flatMap(({ label, ink }, i) => {
      const { most, least } = columnsAt(family, i);
      const at = plot.series[most].show === false ? null : lastInView(plot, most);
      if (at === null) return [];
      const value = (Number(plot.data[most][at]) + Number(plot.data[least][at])) / 2;
      const x = Math.min(plot.valToPos(plot.data[0][at], 'x', true), left + width);
      return [{ label, ink, x, y: plot.valToPos(value, 'y', true), faded: plot.series[most].alpha !== 1 }];
    });
    ctx.font = canvasFont();
    ctx.textAlign = 'left';
    ctx.textBaseline = 'middle';
    const names = ends.toSorted((a, b) => a.y - b.y);
    const places = apart(
      names.map(({ y }) => y),
      APART * size,
      top + height,
    );
    for (const [i, { label, ink, x, y, faded }] of names.entries()) {
      const from = left + width + LEADER * size;
      ctx.globalAlpha = faded ? 0.35 : 1;
      ctx.strokeStyle = inks()[ink];
      ctx.beginPath();
      ctx.moveTo(x, y);
      ctx.lineTo(from - 3 * size, places[i]);
      ctx.stroke();
      ctx.fillStyle = inks().graphite;
      ctx.fillText(fitting(ctx, label, (roomForNames(plot) - LEADER) * size), from, places[i]);
    }
  });

function lastInView(plot: UPlot, column: number): number | null {
  const { min, max } = plot.scales.x;
  const values = plot.data[column];
  for (let i = values.length - 1; i >= 0; i--) {
    const time = plot.data[0][i];
    if (time < (min ?? 0)) return null;
    if (time <= (max ?? 0) && typeof values[i] === 'number') return i;
  }
  return null;
}

/** Rising heights, none nearer to the next than `step` and none below `floor`, moved as little as that takes. */
export function apart(wanted: readonly number[], step: number, floor: number): number[] {
  const placed: number[] = [];
  for (const y of wanted) placed.push(Math.max(y, (placed.at(-1) ?? Number.NEGATIVE_INFINITY) + step));
  for (let i = placed.length - 1, most = floor; i >= 0; i--, most -= step)
    placed[i] = Math.min(placed[i], most);
  return placed;
}
