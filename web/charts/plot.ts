/** What all charts on uPlot share: a plot that follows its box and the theme, the axes, the shading. */
import { figures } from '../../src/words/index.ts';
import { inks, watchInks } from './inks.ts';
import { isPrinting, PAPER_WIDTH } from './paper.ts';
import { timeTicks } from './timeTicks.ts';
import UPlot from './uplot.ts';

/** All plots of a page have the same room beside them, so that their instants stand under each other. */
export const AXIS_WIDTH = 46; // [px]
/** Half a time's width, so that the last one is not cut. */
export const RIGHT = 20; // [px]
const FONT_SIZE = 12; // [px]

/** A plot in `into`, as wide as that is, redrawn when the theme changes and for paper. */
export function mountPlot(
  into: HTMLElement,
  options: Omit<UPlot.Options, 'width'>,
  data: UPlot.AlignedData,
): { readonly plot: UPlot; readonly destroy: () => void } {
  const plot = new UPlot({ ...options, width: Math.max(into.clientWidth, 120) }, data, into);
  const fit = () => {
    const width = isPrinting() ? PAPER_WIDTH : into.clientWidth;
    if (width > 0 && width !== plot.width) plot.setSize({ width, height: options.height });
  };
  const resize = new ResizeObserver(fit);
  resize.observe(into);
  const unwatch = watchInks(() => {
    fit();
    plot.redraw(false, true);
  });
  return {
    plot,
    destroy: () => {
      unwatch();
      resize.disconnect();
      plot.destroy();
    },
  };
}

export const canvasFont = (size = FONT_SIZE) => `${size * UPlot.pxRatio}px ${inks().font}`;

const axisBase = (): UPlot.Axis => ({
  stroke: () => inks().graphite,
  font: `${FONT_SIZE}px ${inks().font}`,
  grid: { stroke: () => inks().chalk, width: 1 },
  ticks: { stroke: () => inks().chalk, width: 1, size: 5 },
});

/** Steps of a value axis: halves and quarters of a step would ask for another decimal. */
const steps = [-2, -1, 0, 1, 2, 3, 4, 5].flatMap((power) => [1, 2, 5].map((n) => Number(`${n}e${power}`)));

/**
 * Round times of the house's clock.
 *
 * @param words false where the plot below has them
 * @param right what stands free beside the plot [px]
 */
export function timeAxis(timeZone: string, words = true, right = (_plot: UPlot) => RIGHT): UPlot.Axis {
  const ticksOf = (plot: UPlot, from: number, to: number) =>
    timeTicks(from, to, plot.width - AXIS_WIDTH - right(plot), timeZone);
  return {
    ...axisBase(),
    splits: (plot, _axis, from, to) => ticksOf(plot, from, to).map(({ at }) => at),
    values: (plot, splits) => {
      if (!words) return splits.map(() => '');
      const { min, max } = plot.scales.x;
      const labels = new Map(ticksOf(plot, min ?? 0, max ?? 0).map(({ at, label }) => [at, label]));
      return splits.map((at) => labels.get(at) ?? '');
    },
    size: words ? 40 : 6,
    ...(words ? {} : { ticks: { show: false } }),
  };
}

export const valueAxis = (): UPlot.Axis => ({
  ...axisBase(),
  size: AXIS_WIDTH,
  space: 34,
  incrs: steps,
  values: (_plot, splits, _axis, _space, step) =>
    splits.map((value) => figures.decimal(value, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)))),
});

/** Room above and below the readings; some height also where there are none or all are alike. */
export function padded(_plot: UPlot, low: number | null, high: number | null): [number, number] {
  if (low === null || high === null) return [0, 1];
  const room = Math.max((high - low) * 0.08, 0.25);
  return [low >= 0 && low - room < 0 ? 0 : low - room, high + room];
}

/** The height of the plot from one instant to another, cut at its edges; null outside [canvas px]. */
export function spanOnCanvas(plot: UPlot, from: number, to: number): { left: number; width: number } | null {
  const { left, width } = plot.bbox;
  const [a, b] = [from, to].map((at) => Math.min(Math.max(plot.valToPos(at, 'x', true), left), left + width));
  return b > a ? { left: a, width: b - a } : null;
}
