/** One family of readings as a plot: its lines with their bands from minimum to maximum, the nights, the stages. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { inks, thinned } from './inks.ts';
import { canvasFont, padded, RIGHT, spanOnCanvas, timeAxis, valueAxis } from './plot.ts';
import { alone, columnsOf, type Family, type Line } from './readingsSeries.ts';
import UPlot from './uplot.ts';
import { between, type View } from './view.ts';

/** What the plot asks for whenever it draws: it is made once and outlives many views. */
export interface Source {
  readonly readings: () => ReadingsAnswer;
  readonly view: () => View;
  readonly setView: (view: View) => void;
  readonly follow: (plot: UPlot) => void;
}

const STAGES_HEIGHT = 24; // [px]

export const heightOfPlot = (family: Family, first: boolean) =>
  (family.quantity === 'temperature' ? 300 : 190) + (first ? STAGES_HEIGHT : 0);

export function readingsPlot(
  family: Family,
  first: boolean,
  timeZone: string,
  together: string,
  source: Source,
): Omit<UPlot.Options, 'width'> {
  return {
    height: heightOfPlot(family, first),
    padding: [first ? STAGES_HEIGHT + 4 : 8, RIGHT, 0, 0],
    legend: { show: false },
    axes: [timeAxis(timeZone), valueAxis()],
    scales: {
      x: { time: false, range: () => [source.view().from, source.view().to] },
      y: { range: padded },
    },
    series: [{}, ...family.lines.flatMap((line) => [seriesOf(line), seriesOf(line)])],
    bands: family.lines.map(({ ink }, i) => ({
      series: [2 * i + 1, 2 * i + 2],
      fill: () => thinned(inks()[ink], 0.22),
    })),
    cursor: {
      y: false,
      drag: { x: true, y: false, setScale: false, dist: 4 },
      // Only the cursor is shared: each plot would otherwise set the view anew.
      sync: {
        key: together,
        setSeries: false,
        filters: { pub: (type) => type === 'mousemove' || type === 'mouseleave' },
      },
      points: { size: 6 },
      bind: {
        // Shift and drag moves the view (`gestures.ts`).
        mousedown: (_plot, _target, handler) => (event) => (event.shiftKey ? null : handler(event)),
        dblclick: () => () => {
          source.setView(wholeOf(source.readings()));
          return null;
        },
      },
    },
    hooks: {
      drawClear: [(plot) => drawNights(plot, source.readings())],
      draw: [(plot) => drawStages(plot, source.readings(), first)],
      setCursor: [source.follow],
      setSelect: [
        (plot) => {
          const { left, width } = plot.select;
          if (width > 0) {
            const [from, to] = [left, left + width].map((x) => plot.posToVal(x, 'x'));
            source.setView(between(from, to, wholeOf(source.readings())));
          }
          plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
    },
  };
}

export const wholeOf = ({ first, last }: ReadingsAnswer): View => ({ from: first, to: last });

export const dataOf = (readings: ReadingsAnswer, family: Family): UPlot.AlignedData =>
  columnsOf(readings, family);

const seriesOf = ({ ink, dash }: Line): UPlot.Series => ({
  stroke: () => inks()[ink],
  width: 1.25,
  dash: [...dash],
  points: {
    show: true,
    size: 3,
    fill: () => inks()[ink],
    filter: (plot, series) => alone(plot.data[series] as (number | null | undefined)[]),
  },
});

/** A used night is a shade; one that was left out is hollow. */
function drawNights(plot: UPlot, { nights }: ReadingsAnswer): void {
  const { ctx, bbox } = plot;
  const { nightShade, line } = inks();
  ctx.save();
  ctx.lineWidth = UPlot.pxRatio;
  for (const { sunset, sunrise, used } of nights) {
    const span = spanOnCanvas(plot, sunset, sunrise);
    if (span === null) continue;
    if (used) {
      ctx.fillStyle = nightShade;
      ctx.fillRect(span.left, bbox.top, span.width, bbox.height);
    } else {
      ctx.strokeStyle = thinned(line, 0.55);
      ctx.strokeRect(span.left + 0.5, bbox.top + 0.5, span.width - 1, bbox.height - 1);
    }
  }
  ctx.restore();
}

/** A measure over each stage with its name; its bounds run down through every plot. */
function drawStages(plot: UPlot, { stages }: ReadingsAnswer, named: boolean): void {
  const { ctx, bbox } = plot;
  const size = UPlot.pxRatio;
  ctx.save();
  ctx.strokeStyle = inks().line;
  ctx.fillStyle = inks().graphite;
  ctx.lineWidth = size;
  ctx.setLineDash([]);
  ctx.font = canvasFont();
  ctx.textBaseline = 'bottom';
  ctx.textAlign = 'center';
  const top = bbox.top - (named ? 8 * size : 0);
  for (const { name, from, to } of stages) {
    const span = spanOnCanvas(plot, from, to);
    if (span === null) continue;
    ctx.beginPath();
    for (const at of [from, to]) {
      const x = Math.round(plot.valToPos(at, 'x', true));
      if (x < bbox.left || x > bbox.left + bbox.width) continue;
      ctx.moveTo(x, top - (named ? 5 * size : 0));
      ctx.lineTo(x, bbox.top + bbox.height);
    }
    if (named) {
      ctx.moveTo(span.left, top);
      ctx.lineTo(span.left + span.width, top);
    }
    ctx.stroke();
    const text = named ? fitting(ctx, name, span.width - 8 * size) : '';
    ctx.fillText(text, span.left + span.width / 2, top - 3 * size);
  }
  ctx.restore();
}

/** The name, or as much of it as fits; nothing rather than a letter or two. */
function fitting(ctx: CanvasRenderingContext2D, name: string, width: number): string {
  if (ctx.measureText(name).width <= width) return name;
  const letters = Array.from(name, (_, n) => n).findLast(
    (n) => ctx.measureText(`${name.slice(0, n)}…`).width <= width,
  );
  return letters === undefined || letters < 3 ? '' : `${name.slice(0, letters)}…`;
}
